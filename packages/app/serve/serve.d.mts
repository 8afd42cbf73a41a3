/** Serves `folder` at http://localhost:PORT, for this machine alone. Rejects with `EADDRINUSE` where the port is taken. */
export function serveApp(
  folder: string,
  port: number,
): Promise<{ readonly port: number; readonly address: string; readonly close: () => Promise<void> }>;
