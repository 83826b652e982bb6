// The scripts of the bench. Every page works without them; with them each box
// is saved as it is left, also while the shop cannot be reached.
import { startAway } from "./away.js";
import { startBoxes } from "./boxes.js";
import { startLive } from "./live.js";
import { startSmall } from "./small.js";

document.documentElement.classList.add("scripts");
startSmall(document);
startAway();
startBoxes();
startLive();
