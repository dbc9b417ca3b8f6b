import preact from '@preact/preset-vite';
import { defineConfig } from 'wxt';

export default defineConfig({
  imports: false,
  manifest: {
    name: 'Platewright',
    description: 'Log a meal in seconds from your own larder; your data stays with you.',
    permissions: ['storage', 'unlimitedStorage', 'alarms'],
    host_permissions: ['http://127.0.0.1/*', 'http://localhost/*'],
    minimum_chrome_version: '120',
  },
  vite: () => ({ plugins: [preact()] }),
});
