import { type Analysis, analyses, type Problem } from "@wingseed/engine";

/** What came of a question put at the door of an analysis. */
export type Answered<Outputs> =
  | { readonly outputs: Outputs; readonly problem?: never }
  | { readonly problem: Problem; readonly outputs?: never };

const nobody = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (name: string): never => {
    throw new Error(`no other analysis is at hand here: ${name}`);
  },
};

/** Runs an analysis that needs no project, with its inputs checked as every face checks them. */
export function runAnalysis<Outputs>(name: string, inputs: unknown): Answered<Outputs> {
  const analysis = analyses.find((candidate) => candidate.name === name) as Analysis<unknown, Outputs> | undefined;
  if (!analysis) throw new Error(`there is no analysis named ${name}`);
  const read = analysis.inputs.safeParse(inputs);
  if (!read.success) {
    const complaints = read.error.issues.map((issue) => `${issue.path.join(".") || "inputs"}: ${issue.message}`);
    return { problem: { kind: "invalid-inputs", message: complaints.join("; ") } };
  }
  const outcome = analysis.run({ documents: {}, rasters: {} }, read.data, nobody);
  return outcome.problem ? { problem: outcome.problem } : { outputs: outcome.outputs };
}

/** The same where a problem means that the check failed. */
export function outputsOf<Outputs>(name: string, inputs: unknown): Outputs {
  const answered = runAnalysis<Outputs>(name, inputs);
  if (answered.problem) throw new Error(`${name} gave no result: ${answered.problem.message}`);
  return answered.outputs;
}
