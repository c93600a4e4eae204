import { chosenVariant } from "../model/inputs.ts";
import type { VariantsField } from "../model/schema.ts";
import { useSession } from "../session-context.ts";
import { AnyField, type AnyFieldProps } from "./inputs-form.tsx";

/** An input that can be given in several ways: which way, and then its own fields. */
export function VariantFields({ field, question, run, base }: AnyFieldProps & { readonly field: VariantsField }) {
  const { address } = useSession();
  const chosen = chosenVariant(field, base, question.drafts);
  const id = `input-${field.path}`;
  return (
    <fieldset className="group">
      <legend>{field.label}</legend>
      {field.description && <p className="description">{field.description}</p>}
      <div className="field">
        <label htmlFor={id}>Given as</label>
        <select
          id={id}
          value={chosen?.name ?? ""}
          onChange={(event) => address.getState().change(`${field.path}~`, event.target.value || undefined)}
        >
          {!field.required && <option value="">not given</option>}
          {field.variants.map((variant) => (
            <option key={variant.name} value={variant.name}>
              {variant.name}
            </option>
          ))}
        </select>
      </div>
      {chosen && <AnyField field={chosen.field} question={question} run={run} base={base} />}
    </fieldset>
  );
}
