/** Private networks are those of RFC 1918 and RFC 4193. AF_NETLINK tells the addresses of this machine. */
const REACH = {
  loopback: `RestrictAddressFamilies=AF_UNIX AF_INET AF_INET6
IPAddressDeny=any
IPAddressAllow=localhost`,
  private: `RestrictAddressFamilies=AF_UNIX AF_INET AF_INET6 AF_NETLINK
IPAddressDeny=any
IPAddressAllow=localhost link-local multicast 10.0.0.0/8 172.16.0.0/12 192.168.0.0/16 fc00::/7`,
  anyone: 'RestrictAddressFamilies=AF_UNIX AF_INET AF_INET6 AF_NETLINK',
} as const;

/** How a service starts the daemon. */
export interface ServiceCommand {
  /** Program and arguments, absolute. */
  command: readonly string[];
  /** Folders that the daemon writes to, absolute. */
  writes: readonly string[];
  /** Whom it talks with: this machine, the networks that are private by their address, or anyone. */
  reach: keyof typeof REACH;
}

/** Takes from the daemon what it does not need (systemd.exec(5)). MemoryDenyWriteExecute stays off: V8 compiles. */
const HARDENED = `NoNewPrivileges=yes
CapabilityBoundingSet=
AmbientCapabilities=
PrivateUsers=yes
PrivateTmp=yes
PrivateMounts=yes
PrivateDevices=yes
DevicePolicy=closed
PrivateIPC=yes
ProtectSystem=strict
ProtectHome=read-only
ProtectProc=invisible
ProcSubset=pid
ProtectClock=yes
ProtectHostname=yes
ProtectKernelLogs=yes
ProtectKernelModules=yes
ProtectKernelTunables=yes
ProtectControlGroups=yes
RestrictNamespaces=yes
RestrictRealtime=yes
RestrictSUIDSGID=yes
LockPersonality=yes
RemoveIPC=yes
KeyringMode=private
SystemCallArchitectures=native
SystemCallFilter=@system-service
SystemCallFilter=~@privileged @resources @obsolete
SystemCallErrorNumber=EPERM
UMask=0077`;

/** A unit of the user's own systemd, as text. */
export function systemdUnit({ command, writes, reach }: ServiceCommand): string {
  return `[Unit]
Description=Platewright

[Service]
Type=exec
ExecStart=${command.map(quoted).join(' ')}
Restart=on-failure
RestartSec=2
TimeoutStopSec=10
${writes.map((folder) => `ReadWritePaths=${folderName(folder)}`).join('\n')}
${REACH[reach]}
${HARDENED}

[Install]
WantedBy=default.target
`;
}

/** As systemd.exec(5) reads a path: % begins something else, and \\ and $ are themselves. */
function folderName(path: string): string {
  const text = path.replaceAll('%', '%%');
  if (!/[\s"']/.test(text)) return text;
  return text.includes("'") ? `"${text}"` : `'${text}'`;
}

/** As systemd.service(5) reads it: % and $ begin something else. */
function quoted(word: string): string {
  const text = word
    .replaceAll('\\', '\\\\')
    .replaceAll('"', '\\"')
    .replaceAll('%', '%%')
    .replaceAll('$', '$$$$');
  return /[\s"'\\;]/.test(text) ? `"${text}"` : text;
}
