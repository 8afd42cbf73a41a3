/** Writes the sheets as one PDF, and drawings and solids for other programs, away from the screen. */
import type { Plan } from "mouldwright/cutting";
import { cataloguedTrouble, fine, type Outcome } from "mouldwright/measure";
import {
  depthGaugeSolid,
  exportDxf,
  exportSvg,
  mouldingSolid,
  type Page,
  sandingBlockSolid,
  sheetPages,
  writeStl,
} from "mouldwright/sheets";
import { type FontFiles, writePdf } from "mouldwright-pdf";
import regularUrl from "mouldwright-pdf/fonts/DejaVuSansCondensed.ttf?url";
import boldUrl from "mouldwright-pdf/fonts/DejaVuSansCondensed-Bold.ttf?url";
import { fitDrawingsOf } from "../../fitting/fit-drawings.ts";
import type { FromWriter, OtherFileWish, PageTold, SheetsWish, ToWriter, Written } from "./messages.ts";

addEventListener("message", ({ data }: MessageEvent<ToWriter>) => {
  void answer(data);
});

async function answer(wish: ToWriter): Promise<void> {
  try {
    const written = wish.kind === "sheets" ? await sheetsOf(wish) : otherFileOf(wish);
    if (written.ok) send({ kind: "written", wish: wish.wish, ...written.value });
    else send({ kind: "refused", wish: wish.wish, troubles: [written.trouble, ...(written.more ?? [])] });
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    send({ kind: "refused", wish: wish.wish, troubles: [cataloguedTrouble("internal", "", { detail })] });
  }
}

type Content = Pick<Written, "bytes" | "pages" | "warnings">;

async function sheetsOf({ plan, options, job }: SheetsWish): Promise<Outcome<Content>> {
  const isFitAsked = options.kinds?.includes("fit") ?? true;
  const fit = isFitAsked ? fitDrawingsOf(job) : null;
  const asked = fit === null ? options : { ...options, fit: { ...options.fit, drawings: fit.drawings } };
  const pages = sheetPages(plan, asked);
  if (!pages.ok) return pages;
  const bytes = await writePdf(pages.value, { title: plan.name, fonts: await fonts() });
  return fine({
    bytes: new Uint8Array(bytes),
    pages: pages.value.map(told),
    warnings: fit?.troubles ?? [],
  });
}

/** A page's title starts with the job's name, which may itself hold a colon. */
function told({ sheet, title, isFullSize, widthMm, heightMm }: Page, index: number): PageTold {
  return {
    number: index + 1,
    sheet,
    title: title.slice(title.lastIndexOf(": ") + 1).trim(),
    isFullSize,
    widthMm,
    heightMm,
  };
}

function otherFileOf({ plan, file, lengthMm }: OtherFileWish): Outcome<Content> {
  const bytes = otherBytes(plan, file, lengthMm);
  return bytes.ok ? fine({ bytes: new Uint8Array(bytes.value), pages: [], warnings: [] }) : bytes;
}

function otherBytes(plan: Plan, file: OtherFileWish["file"], lengthMm: number): Outcome<Uint8Array> {
  switch (file) {
    case "dxf":
      return fine(new TextEncoder().encode(exportDxf(plan)));
    case "svg":
      return fine(new TextEncoder().encode(exportSvg(plan)));
    case "moulding":
      return fine(writeStl(mouldingSolid(plan, lengthMm)));
    case "sanding block":
      return fine(writeStl(sandingBlockSolid(plan, lengthMm)));
    case "depth gauge": {
      const solid = depthGaugeSolid(plan);
      return solid.ok ? fine(writeStl(solid.value)) : solid;
    }
  }
}

let fetched: Promise<FontFiles> | null = null;

/** Both fonts, fetched once; a fetch that failed is tried again with the next set. */
function fonts(): Promise<FontFiles> {
  fetched ??= Promise.all([bytesAt(regularUrl), bytesAt(boldUrl)]).then(([regular, bold]) => ({
    regular,
    bold,
  }));
  fetched.catch(() => {
    fetched = null;
  });
  return fetched;
}

async function bytesAt(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`the sheets' lettering could not be loaded (${response.status})`);
  return new Uint8Array(await response.arrayBuffer());
}

function send(message: FromWriter): void {
  if (message.kind === "written") postMessage(message, { transfer: [message.bytes.buffer] });
  else postMessage(message);
}
