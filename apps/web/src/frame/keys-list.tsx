import { useEffect, useRef } from "react";
import { useSession, useView } from "../session-context.ts";
import { keys } from "./keys.ts";

const others: readonly (readonly [string, string])[] = [
  ["Alt ↑ ↓", "question before, question after"],
  ["Esc", "close; the focus returns"],
  ["↑ ↓ on a condition", "a step more or less; Shift ten steps, Alt a tenth"],
  ["← → on a picture", "move the cursor; Shift ten places, Home and End"],
  ["← → ↑ ↓ in a table", "from number to number; Enter says where it comes from"],
];

/** Every key that does something here. */
export function KeysList() {
  const { view } = useSession();
  const open = useView((state) => state.keysOpen);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (open) dialog.current?.showModal();
    else dialog.current?.close();
  }, [open]);
  const close = () => view.setState({ keysOpen: false });
  return (
    <dialog ref={dialog} className="keys" aria-label="Keys" onClose={close}>
      <h2>Keys</h2>
      <p className="quiet small">Letters act outside fields only.</p>
      <dl>
        {[...keys.map((key) => [key.key, key.does] as const), ...others].map(([key, does]) => (
          <div key={key}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <button type="button" onClick={close}>
        Close
      </button>
    </dialog>
  );
}
