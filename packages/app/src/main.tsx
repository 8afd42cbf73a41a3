import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { showTheme } from "./common/theme.ts";
import { keepPlanning } from "./planner/plan-on-bench.ts";
import { Frame } from "./shell/frame.tsx";
import { listenToKeys } from "./shell/keys.ts";
import { keepOffline } from "./shell/offline.ts";
import { openLastJob } from "./shell/open-last-job.ts";
import "./styles/theme.css";
import "./styles/base.css";
import "./styles/frame.css";
import "./styles/widgets.css";

showTheme();

const room = document.getElementById("room");
if (room !== null) {
  createRoot(room).render(
    <StrictMode>
      <Frame />
    </StrictMode>,
  );
  void openLastJob()
    .then(() => {
      keepPlanning();
      listenToKeys();
    })
    .finally(() => keepOffline());
}
