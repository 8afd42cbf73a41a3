/** The figures that a maker came for, large enough to be read from two metres. */
import type { ReactNode } from "react";

export function Figures({ children }: { readonly children: ReactNode }) {
  return <dl className="fit-figures figures">{children}</dl>;
}

export function Figure({
  name,
  isWide,
  children,
}: {
  readonly name: string;
  readonly isWide?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <div className={isWide === true ? "fit-figure fit-figure-wide" : "fit-figure"}>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
