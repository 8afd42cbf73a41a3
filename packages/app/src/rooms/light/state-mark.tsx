/** A short piece of the line that marks a state along the section, for the key and the table. */
import type { LightState } from "mouldwright/light";

const CLASS: Readonly<Record<LightState | "ray", string>> = {
  light: "lit-leader",
  shade: "lit-shade",
  shadow: "lit-shadow",
  ray: "lit-ray",
};

export function StateMark({ state }: { readonly state: LightState | "ray" }) {
  return (
    <svg className="state-mark" viewBox="0 0 24 8" aria-hidden="true">
      <path className={CLASS[state]} d="M0 4h24" />
    </svg>
  );
}
