import preact from '@preact/preset-vite';
import { defineConfig } from 'wxt';

/** Nothing is sent anywhere until a person pairs with a daemon; from then on it is their records. */
const firefox = {
  gecko: {
    id: 'platewright@platewright.invalid',
    strict_min_version: '140.0',
    data_collection_permissions: { required: ['none'], optional: ['healthInfo'] },
  },
};

export default defineConfig({
  imports: false,
  manifest: ({ browser }) => ({
    name: 'Platewright',
    description: 'Log a meal in seconds from your own larder; your data stays with you.',
    permissions: ['storage', 'unlimitedStorage', 'alarms'],
    host_permissions: ['http://127.0.0.1/*', 'http://localhost/*'],
    // Asked only when a person pairs with a daemon on another machine, which is spoken to over TLS only.
    optional_host_permissions: ['https://*/*'],
    // A private window keeps nothing, and what is logged here is kept.
    incognito: 'not_allowed',
    minimum_chrome_version: '126',
    commands: { _execute_action: { suggested_key: { default: 'Alt+Shift+P' } } },
    ...(browser === 'firefox' && { browser_specific_settings: firefox }),
  }),
  vite: () => ({ plugins: [preact()] }),
});
