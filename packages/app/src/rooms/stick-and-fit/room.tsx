/** Stick and fit: what to buy, how the saw is set, and how pieces meet, each on a page of its own. */
import { Tab, TabList, TabPanel, Tabs } from "react-aria-components";
import { create } from "zustand";
import { CornerPage } from "./corner-page.tsx";
import { CornicePage } from "./cornice-page.tsx";
import "./fit.css";
import { FIT_PAGES, type FitPage } from "../../fitting/fit-answers.ts";
import { FramePage } from "./frame-page.tsx";
import { SidePage } from "./side-page.tsx";
import { SlopesPage } from "./slopes-page.tsx";
import { StickPage } from "./stick-page.tsx";
import { UnlikePage } from "./unlike-page.tsx";

const PAGE_WORDS: Readonly<Record<FitPage, string>> = {
  stick: "Stick",
  corner: "Corner",
  frame: "Frame",
  cornice: "Cornice",
  slopes: "Slopes",
  unlike: "Unlike",
  side: "Side",
};

/** Where the maker was last, so that coming back from another room leads there. */
const useWhere = create<{ readonly page: FitPage }>()(() => ({ page: "stick" }));

export function Content() {
  const page = useWhere((where) => where.page);
  return (
    <div className="fit-room">
      <h1 className="only-read">Stick and fit</h1>
      <Tabs
        selectedKey={page}
        onSelectionChange={(key) => {
          const chosen = FIT_PAGES.find((one) => one === key);
          if (chosen !== undefined) useWhere.setState({ page: chosen });
        }}
      >
        <TabList className="fit-tabs" aria-label="Stick and fit">
          {FIT_PAGES.map((one) => (
            <Tab key={one} id={one} className="fit-tab">
              {PAGE_WORDS[one]}
            </Tab>
          ))}
        </TabList>
        <TabPanel id="stick">
          <StickPage />
        </TabPanel>
        <TabPanel id="corner">
          <CornerPage />
        </TabPanel>
        <TabPanel id="frame">
          <FramePage />
        </TabPanel>
        <TabPanel id="cornice">
          <CornicePage />
        </TabPanel>
        <TabPanel id="slopes">
          <SlopesPage />
        </TabPanel>
        <TabPanel id="unlike">
          <UnlikePage />
        </TabPanel>
        <TabPanel id="side">
          <SidePage />
        </TabPanel>
      </Tabs>
    </div>
  );
}
