/** Prints the sheets, says what to set, and what to do where the browser cannot. */
import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import { hintDone } from "../../first-visit/shown-hints.ts";
import { canPrintHere, printPdf } from "./print-pdf.ts";

type Asked = "not yet" | "asked" | "cannot";

export function PrintButton({ file }: { readonly file: Blob | null }) {
  const [asked, setAsked] = useState<Asked>("not yet");
  // Other sheets: what was said of the last ones no longer holds.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the file is what it hangs on.
  useEffect(() => setAsked("not yet"), [file]);
  const print = async (): Promise<void> => {
    if (file === null) return;
    hintDone("sheet");
    setAsked(canPrintHere() && (await printPdf(file)) ? "asked" : "cannot");
  };
  return (
    <>
      <Button className="button" isDisabled={file === null} onPress={() => void print()}>
        Print
      </Button>
      {asked === "not yet" || file === null ? null : (
        <p className={asked === "cannot" ? "trouble print-said" : "quiet print-said"} role="status">
          {asked === "cannot"
            ? "This browser cannot print a PDF from here. Save the PDF, open it in your PDF reader and print it there at 100 %."
            : "In the print window set the scale to 100 %."}{" "}
          {asked === "asked" ? <TabLink file={file} /> : null}
        </p>
      )}
    </>
  );
}

/** The file in a tab of its own, as long as this stands. */
function TabLink({ file }: { readonly file: Blob }) {
  const [url, setUrl] = useState("");
  useEffect(() => {
    const made = URL.createObjectURL(file);
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [file]);
  return url === "" ? null : (
    <>
      No window has opened?{" "}
      <a className="print-tab" href={url} target="_blank" rel="noopener">
        Open the PDF in a tab
      </a>{" "}
      and print it there.
    </>
  );
}
