import { Command, CommanderError, InvalidArgumentError, Option } from "commander";
import { type ExitStatus, exitStatus, Refused } from "./exit-status.ts";
import { formats } from "./formats.ts";
import type { Place } from "./place.ts";
import type { Streams } from "./streams.ts";

const statusHelp = `
The name of an analysis is a command too: what \`wingseed list\` names is asked by \`wingseed run NAME\` or \`wingseed NAME\`.
Exit status: 0 done; 1 done, a requirement is not met; 2 wrong usage or document; 3 no result, with the reason;
70 a mistake in Wingseed. Results go to standard output, progress and cautions to standard error.`;

/** Runs a command line and gives its exit status. Commands are loaded when they are asked for. */
export async function commandLine(words: readonly string[], place: Place, streams: Streams): Promise<ExitStatus> {
  let status: ExitStatus = exitStatus.done;
  const program = programFor(place, streams, (result) => {
    status = result;
  });
  try {
    if (words.length === 0) return await (await import("./commands/list.ts")).showQuestions(place, streams);
    const { withAnalysisCommand } = await import("./analysis-command.ts");
    const commands = program.commands.map((command) => command.name());
    await program.parseAsync([...(await withAnalysisCommand(place, words, commands))], { from: "user" });
    return status;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitStatus.done : exitStatus.usage;
    if (error instanceof Refused) {
      streams.err(`${error.message}\n`);
      return error.status;
    }
    const stack = error instanceof Error ? (error.stack ?? error.message) : String(error);
    streams.err(`This is a mistake in Wingseed ${place.version}, not yours. Please report it with these lines:\n${stack}\n`);
    return exitStatus.internal;
  }
}

function programFor(place: Place, streams: Streams, finish: (status: ExitStatus) => void): Command {
  const program = new Command("wingseed")
    .description("From one description of an unmanned aircraft, the answers its maker is asked for.")
    .version(place.version, "-V, --version", "print the version")
    .helpOption("-h, --help", "print this help")
    .helpCommand(false)
    .exitOverride()
    .showHelpAfterError("(--help says more)")
    .addHelpText("after", statusHelp)
    .configureOutput({ writeOut: streams.out, writeErr: streams.err, getOutHelpWidth: () => streams.width });

  program
    .command("list")
    .description("every analysis with its question")
    .addOption(new Option("--format <format>", "how to write").choices(["table", "json"]).default("table"))
    .addOption(registryOption())
    .action(async ({ format, registry }) => {
      const { listAnalyses, registryAt } = await import("./commands/list.ts");
      finish(await listAnalyses(await registryAt(place, registry), streams, format));
    });

  program
    .command("run")
    .description("ask one analysis")
    .argument("<analysis>", "its name, as in `wingseed list`")
    .argument(
      "[project-or-document...]",
      "project folder (default: the demo), a mission or aircraft of it by name, a .json file with inputs (as --input)",
    )
    .option(
      "--set <path=value>",
      'one input with its unit, as in --set inputs.payload="1.1 kg", or a value of a document, parts by their names, as in --set aircraft/baseline.yaml#rotors.main.radius="1.2 m"; may be repeated',
      collect,
    )
    .option("--sweep <path=values>", 'one case for each value, as in --sweep inputs.payload="1 kg, 2 kg"; may be repeated', collect)
    .option(
      "--inputs, --input <json>",
      "JSON with inputs (plain numbers are SI), a list of inputs, or a result to ask again: a file, - for standard input, or the JSON itself",
    )
    .option("--example", "start from the inputs that show the analysis at work")
    .addOption(new Option("--format <format>", "how to write").choices([...formats]).default("table"))
    .option("--figure <id>", "which figure to write as svg (default: the main picture)")
    .option("-o, --output <file>", "write to a file instead of standard output")
    .addOption(registryOption())
    .addOption(workersOption())
    .option("--no-cache", "keep no result and use no kept one")
    .action(async (name, words, options) =>
      finish(await (await import("./commands/run.ts")).runAnalysis(place, streams, name, words, options)),
    );

  program
    .command("check")
    .description("every problem of every document, with file:line:column")
    .argument("[project]", "project folder (default: the demo)")
    .addOption(new Option("--format <format>", "how to write").choices(["table", "json"]).default("table"))
    .action(async (project, { format }) =>
      finish(await (await import("./commands/check.ts")).checkProject(place, streams, project, format)),
    );

  program
    .command("start")
    .description("serve the web app to this machine and print its address")
    .argument("[project]", "project folder (default: the demo)")
    .addOption(new Option("--port <number>", "0 takes any free one").argParser(wholeNumber(0, 65_535)).default(4180))
    .addOption(registryOption())
    .addOption(workersOption())
    .option("--no-cache", "keep no result and use no kept one")
    .action(async (project, options) => finish(await (await import("./commands/start.ts")).startServer(place, streams, project, options)));

  program
    .command("dossier")
    .description("write the document to hand over")
    .argument("[project]", "project folder (default: the demo)")
    .addOption(new Option("-o, --output <file>", "where to write").default("dossier.pdf"))
    .addOption(registryOption())
    .addOption(workersOption())
    .option("--no-cache", "keep no result and use no kept one")
    .action(async (project, options) =>
      finish(await (await import("./commands/dossier.ts")).writeDossier(place, streams, project, options)),
    );

  program
    .command("schema")
    .description("the JSON Schema of a document, or of what an analysis takes and gives")
    .argument("[document]", "without it, the names of all; with --write, the project folder (default: the demo)")
    .option("--write", "write the schemas of all documents into the project, for editors")
    .action(async (name, { write }) => {
      const schemas = await import("./commands/schema.ts");
      finish(await (write ? schemas.writeProjectSchemas(place, streams, name) : schemas.showSchema(place, streams, name)));
    });
  return program;
}

function registryOption(): Option {
  return new Option("--registry <file>", "module with more analyses; it runs with your rights, so use only one you trust");
}

function workersOption(): Option {
  return new Option("--workers <number>", "how many cases at once (default: the processors)").argParser(wholeNumber(1, 256));
}

function collect(value: string, before: readonly string[] = []): readonly string[] {
  return [...before, value];
}

function wholeNumber(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= least && value <= most) return value;
    throw new InvalidArgumentError(`A whole number from ${least} to ${most} is expected.`);
  };
}
