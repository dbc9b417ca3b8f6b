import { join } from 'node:path';
import type { ServiceCommand } from './systemd-unit.ts';

/** Name under which launchd knows the daemon. */
export const LAUNCHD_LABEL = 'platewright';

/** A property list of a launchd agent, as text (launchd.plist(5)). Its log goes to the folder `logs`. */
export function launchdPlist({ command }: ServiceCommand, logs: string): string {
  return `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">
<plist version="1.0">
<dict>
  <key>Label</key>
  <string>${LAUNCHD_LABEL}</string>
  <key>ProgramArguments</key>
  <array>
${command.map((word) => `    <string>${escaped(word)}</string>`).join('\n')}
  </array>
  <key>RunAtLoad</key>
  <true/>
  <key>KeepAlive</key>
  <dict>
    <key>SuccessfulExit</key>
    <false/>
  </dict>
  <key>ProcessType</key>
  <string>Background</string>
  <key>Umask</key>
  <integer>63</integer>
  <key>StandardOutPath</key>
  <string>/dev/null</string>
  <key>StandardErrorPath</key>
  <string>${escaped(join(logs, 'platewright.log'))}</string>
</dict>
</plist>
`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
