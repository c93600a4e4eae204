import { fixedText } from "@wingseed/reports/format";
import { standardText } from "../model/effective.ts";
import { shownText, valueAt } from "../model/inputs.ts";
import type { Question } from "../model/question.ts";
import type { Run } from "../model/run-store.ts";
import type { ChoiceField, Field, QuantityField } from "../model/schema.ts";
import { useSession, useView } from "../session-context.ts";
import { TextControl } from "./text-control.tsx";

interface FieldRowProps {
  readonly field: Field;
  readonly question: Question;
  readonly run: Run | undefined;
  readonly idPrefix?: string;
}

/** One input: label, control with its unit, what it means, what is taken without it, and what is wrong with it. */
export function FieldRow({ field, question, run, idPrefix = "input-" }: FieldRowProps) {
  const { address, catalogue } = useSession();
  const system = useView((view) => view.system);
  const id = idPrefix + field.path;
  const text = shownText(field, question.base, question.drafts);
  const standard = standardText(field, run, system);
  const problems = (run?.problems ?? []).filter((problem) => problem.path === field.path || problem.path?.startsWith(`${field.path}.`));
  const change = (next: string) => {
    const inBase = valueAt(question.base, field.path) !== undefined;
    if (next !== text) address.getState().change(field.path, next === "" && !inBase ? undefined : next);
  };
  const described = [field.description || text === "" ? `${id}-about` : "", problems.length > 0 ? `${id}-problem` : ""]
    .filter(Boolean)
    .join(" ");
  const shared = { id, "aria-describedby": described || undefined, "aria-invalid": problems.length > 0 || undefined };
  const options = optionsOf(field, catalogue.project);
  return (
    <div className="field" data-given={text !== ""}>
      <label htmlFor={id}>{field.label}</label>
      {options ? (
        <select {...shared} value={text} onChange={(event) => change(event.target.value)}>
          {(!field.required || text === "") && (
            <option value="">{standard === "" ? "not given" : `standard: ${choiceText(standard)}`}</option>
          )}
          {options.map((option) => (
            <option key={option} value={option}>
              {choiceText(option)}
            </option>
          ))}
          {text !== "" && !options.includes(text) && <option value={text}>{text}</option>}
        </select>
      ) : (
        <TextControl {...shared} field={field} text={text} standard={standard} system={system} onCommit={change} />
      )}
      <FieldWords id={id} field={field} standard={options ? "" : standard} given={text !== ""} />
      {problems.length > 0 && (
        <p className="field-problem" id={`${id}-problem`}>
          {problems.map((problem) => problem.message).join(" ")}
        </p>
      )}
    </div>
  );
}

interface FieldWordsProps {
  readonly id: string;
  readonly field: Field;
  readonly standard: string;
  readonly given: boolean;
}

function FieldWords({ id, field, standard, given }: FieldWordsProps) {
  const taken = given || standard === "" ? "" : `standard: ${standard}`;
  const about = [field.description, field.kind === "quantity" ? boundsText(field) : ""].filter(Boolean).join(" ");
  if (taken === "" && about === "") return null;
  return (
    <div className="description" id={`${id}-about`}>
      {taken !== "" && <p className="standard">{taken}</p>}
      {about !== "" && <p>{about}</p>}
    </div>
  );
}

function boundsText(field: QuantityField): string {
  if (field.quantity !== "dimensionless") return "";
  if (field.minimum !== undefined && field.maximum !== undefined) return `${boundText(field.minimum)} to ${boundText(field.maximum)}.`;
  return "";
}

/** Large whole numbers in groups of three digits. */
function boundText(bound: number): string {
  return Number.isInteger(bound) ? fixedText(bound, 0) : String(bound).replace("-", "\u2212");
}

function optionsOf(
  field: Field,
  project: { readonly aircraft: readonly string[]; readonly missions: readonly string[] },
): readonly string[] | undefined {
  if (field.kind === "toggle") return ["yes", "no"];
  if (field.kind === "choice") return (field satisfies ChoiceField).options.map(String);
  const meant = field.kind === "text" ? (field.role ?? field.reference) : undefined;
  if (meant === "aircraft" && project.aircraft.length > 0) return project.aircraft;
  if (meant === "mission" && project.missions.length > 0) return project.missions;
  return undefined;
}

function choiceText(option: string): string {
  return option.includes("/") ? option : option.replaceAll("-", " ");
}
