/** The page that lies open; it stays open while the maker looks into another room. */
import { create } from "zustand";
import { hintDone } from "../../first-visit/shown-hints.ts";
import type { Page } from "./pages.ts";

interface OpenPage {
  /** The job whose pages are turned. */
  readonly jobId: string;
  /** Null until a page has been turned to. */
  readonly wished: Page | null;
}

const useOpenPage = create<OpenPage>()(() => ({ jobId: "", wished: null }));

export function useWishedPage(jobId: string): Page | null {
  return useOpenPage((open) => (open.jobId === jobId ? open.wished : null));
}

export function turnTo(jobId: string, page: Page): void {
  useOpenPage.setState({ jobId, wished: page });
  hintDone("cuts");
}
