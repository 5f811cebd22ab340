/** The app's first lines: follow the address, open the phone's own records, draw, and let the worker keep the files. */
import { render } from "preact";
import "./look/tokens.css";
import "./look/base.css";
import "./look/shell.css";
import "./look/controls.css";
import "./look/rows.css";
import "./look/steelyard.css";
import { App } from "./App";
import "./parts/install/install";
import { goOnWaiting } from "./parts/joining/join";
import { followAddress } from "./route";
import { startPhone } from "./sync/start";

followAddress();
void startPhone().then(goOnWaiting);
render(<App />, document.getElementById("app")!);
// The worker comes after the first screen, which does without.
void import("./sync/update").then(({ registerWorker }) => registerWorker());
