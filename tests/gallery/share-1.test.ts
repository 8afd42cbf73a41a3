import { holdShare } from "./hold.ts";

holdShare(0);
