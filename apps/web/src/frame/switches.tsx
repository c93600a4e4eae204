import { useId } from "react";
import { saveChoice } from "../browser/choices.ts";
import type { ThemeChoice } from "../model/session.ts";
import { useSession, useView } from "../session-context.ts";

/** What is the reader's own: day or dusk, units, keys. */
export function Switches() {
  const { view } = useSession();
  const theme = useView((state) => state.theme);
  const system = useView((state) => state.system);
  const id = useId();
  return (
    <div className="switches small">
      <label htmlFor={`${id}theme`}>Light</label>
      <select
        id={`${id}theme`}
        value={theme}
        onChange={(event) => {
          const chosen = event.target.value as ThemeChoice;
          view.setState({ theme: chosen });
          saveChoice("theme", chosen);
        }}
      >
        <option value="system">system</option>
        <option value="light">day</option>
        <option value="dark">dusk</option>
      </select>
      <label htmlFor={`${id}units`}>Units</label>
      <select
        id={`${id}units`}
        value={system}
        onChange={(event) => {
          const chosen = event.target.value === "aviation" ? "aviation" : "si";
          view.setState({ system: chosen });
          saveChoice("units", chosen);
        }}
      >
        <option value="si">metric</option>
        <option value="aviation">aviation</option>
      </select>
      <button type="button" onClick={() => view.setState({ keysOpen: true })}>
        Keys
      </button>
    </div>
  );
}
