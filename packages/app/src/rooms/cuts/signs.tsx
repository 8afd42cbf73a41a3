/** Signs of this room, plain lines as everywhere. Their meaning stands beside them in words. */
import type { ReactNode } from "react";

function Sign({ children }: { readonly children: ReactNode }) {
  return (
    <svg className="sign" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      {children}
    </svg>
  );
}

export function TickSign() {
  return (
    <Sign>
      <path d="M4 13l5 5L20 6" />
    </Sign>
  );
}

export function BackSign() {
  return (
    <Sign>
      <path d="M15 5l-7 7 7 7" />
    </Sign>
  );
}

export function OnSign() {
  return (
    <Sign>
      <path d="M9 5l7 7-7 7" />
    </Sign>
  );
}
