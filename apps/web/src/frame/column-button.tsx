import { useSession, useView } from "../session-context.ts";

/** Opens the answers column where the window is too narrow for it. */
export function ColumnButton() {
  const { view } = useSession();
  const open = useView((state) => state.columnOpen);
  return (
    <button
      type="button"
      className="column-button"
      aria-controls="questions"
      aria-expanded={open}
      onClick={() => {
        view.setState({ columnOpen: true });
        requestAnimationFrame(() => document.querySelector<HTMLElement>("#questions a")?.focus());
      }}
    >
      Questions
    </button>
  );
}
