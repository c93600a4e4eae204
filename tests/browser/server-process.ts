import { type ChildProcess, spawn } from "node:child_process";

/** The built program, started on a free port. */
export interface ServerProcess {
  /** "http://127.0.0.1:PORT", without a slash at the end. */
  readonly address: string;
  stop(): Promise<void>;
}

/** Starts the built command line on the demo project and waits until it has printed where it listens. */
export async function startServer(command = process.env.WINGSEED_CLI ?? "dist/cli.mjs"): Promise<ServerProcess> {
  const child = spawn(process.execPath, [command, "start", "--port", "0"], { stdio: ["ignore", "pipe", "pipe"] });
  const address = await printedAddress(child);
  return {
    address,
    stop: () =>
      new Promise((resolve) => {
        child.once("exit", () => resolve());
        child.kill("SIGTERM");
      }),
  };
}

function printedAddress(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = "";
    const listen = (text: Buffer) => {
      said += text.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(said);
      if (found) resolve(found[0]);
    };
    child.stdout?.on("data", listen);
    child.stderr?.on("data", listen);
    child.once("exit", (code) => reject(new Error(`The server ended with status ${code} before it listened:\n${said}`)));
  });
}
