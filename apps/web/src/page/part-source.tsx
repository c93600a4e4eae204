import { type ReactNode, useRef, useState } from "react";
import { loadedFile } from "../model/loaded-file.ts";
import { fromProject, leftToStandard, type ProjectChoice, partSource, projectChoice } from "../model/part-source.ts";
import type { Question } from "../model/question.ts";
import { fileCase, loadedCases } from "../model/written-base.ts";
import { useSession } from "../session-context.ts";

/** Where the part comes from: the example, an aircraft of the project, or a file of one's own. */
export function PartSource({ question }: { readonly question: Question }) {
  const { address, catalogue } = useSession();
  const chosen = partSource(question);
  const choice = projectChoice(question.slots[0].fields);
  const aircraft = catalogue.project.aircraft[0];
  const drafts = question.drafts;
  const put = (next: Readonly<Record<string, string>>) => {
    const gone = Object.fromEntries(Object.keys(drafts).map((path) => [path, undefined]));
    address.getState().changeAll({ ...gone, ...next });
  };
  const take = (from: ProjectChoice, file: string) =>
    put({ ...leftToStandard(question.slots[0].fields, from, question), ...fromProject(from, file, drafts) });
  return (
    <div className="part-source" data-part-source={chosen}>
      <span className="quiet">Taken from</span>
      <SourceButton pressed={chosen === "example"} onPress={() => put({})}>
        {chosen === "example" && Object.keys(drafts).length > 0 ? "the example, changed" : "the example"}
      </SourceButton>
      {choice && aircraft !== undefined && (
        <SourceButton pressed={chosen === "project"} onPress={() => take(choice, drafts[choice.path] ?? aircraft)}>
          this project
        </SourceButton>
      )}
      <FileButton pressed={chosen === "file"} question={question} onLoad={put} />
      <CaseOfFile question={question} />
    </div>
  );
}

function SourceButton({
  pressed,
  onPress,
  children,
}: {
  readonly pressed: boolean;
  readonly onPress: () => void;
  readonly children: ReactNode;
}) {
  return (
    <button type="button" className="choice" aria-pressed={pressed} onClick={onPress}>
      {children}
    </button>
  );
}

interface FileButtonProps {
  readonly pressed: boolean;
  readonly question: Question;
  readonly onLoad: (drafts: Readonly<Record<string, string>>) => void;
}

function FileButton({ pressed, question, onLoad }: FileButtonProps) {
  const picker = useRef<HTMLInputElement>(null);
  const [refused, refuse] = useState("");
  const take = async (file: File | undefined) => {
    if (!file) return;
    const loaded = loadedFile(file.name, await file.text(), question.slots[0].analysis, question.drafts);
    refuse(loaded.refused ?? "");
    if (loaded.drafts) onLoad(loaded.drafts);
  };
  return (
    <>
      <button
        type="button"
        className="choice"
        aria-pressed={pressed}
        onClick={() => picker.current?.click()}
        onDragOver={(event) => event.preventDefault()}
        onDrop={(event) => {
          event.preventDefault();
          void take(event.dataTransfer.files[0]);
        }}
      >
        a file…
      </button>
      <input
        ref={picker}
        type="file"
        className="unseen"
        tabIndex={-1}
        aria-label="Inputs as JSON, or a table with named columns"
        accept=".json,.csv,.tsv,.txt"
        onChange={(event) => {
          void take(event.target.files?.[0]);
          event.target.value = "";
        }}
      />
      {refused !== "" && (
        <p className="field-problem" role="alert">
          {refused}
        </p>
      )}
    </>
  );
}

/** Name of the file in the form, and which of its cases where it holds several. */
function CaseOfFile({ question }: { readonly question: Question }) {
  const { address } = useSession();
  const loaded = loadedCases(question.drafts);
  if (!loaded) return null;
  if (loaded.cases.length === 1) return <span className="quiet">{loaded.name}</span>;
  return (
    <label className="quiet">
      {loaded.name}, case{" "}
      <select value={loaded.index + 1} onChange={(event) => address.getState().change(fileCase, event.target.value)}>
        {loaded.cases.map((_, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: cases are known by their place
          <option key={index}>{index + 1}</option>
        ))}
      </select>{" "}
      of {loaded.cases.length}
    </label>
  );
}
