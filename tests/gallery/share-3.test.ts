import { holdShare } from "./hold.ts";

holdShare(2);
