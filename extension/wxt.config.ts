import preact from '@preact/preset-vite';
import { defineConfig } from 'wxt';

export default defineConfig({
  imports: false,
  manifest: {
    name: 'Platewright',
    description: 'Log a meal in seconds from your own larder; your data stays with you.',
    permissions: ['storage', 'unlimitedStorage', 'alarms'],
    host_permissions: ['http://127.0.0.1/*', 'http://localhost/*'],
    // Asked only when a person pairs with a daemon on another machine.
    optional_host_permissions: ['http://*/*', 'https://*/*'],
    // A private window keeps nothing, and what is logged here is kept.
    incognito: 'not_allowed',
    minimum_chrome_version: '126',
    commands: { _execute_action: { suggested_key: { default: 'Alt+Shift+P' } } },
  },
  vite: () => ({ plugins: [preact()] }),
});
