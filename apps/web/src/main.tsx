import "@fontsource-variable/ysabeau-office/wght.css";
import "./style/index.css";
import { themeCss } from "@wingseed/reports/draw";
import { createRoot } from "react-dom/client";
import { browserAddress } from "./browser/address-port.ts";
import { savedTheme, savedUnits } from "./browser/choices.ts";
import { Frame } from "./frame/frame.tsx";
import { createAddressStore } from "./model/address-store.ts";
import type { Catalogue } from "./model/catalogue.ts";
import { questionsOf } from "./model/question.ts";
import { createRunStore } from "./model/run-store.ts";
import { createViewStore, type Session } from "./model/session.ts";
import { httpClient, loadCatalogue } from "./server/client.ts";
import { SessionContext } from "./session-context.ts";

const colours = new CSSStyleSheet();
colours.replaceSync(themeCss());
document.adoptedStyleSheets = [colours];

const place = document.getElementById("root");
if (!place) throw new Error("The page has no place for the app.");
const root = createRoot(place);
loadCatalogue().then(
  (catalogue) =>
    root.render(
      <SessionContext value={sessionOf(catalogue)}>
        <Frame />
      </SessionContext>,
    ),
  () => root.render(<Gone />),
);

function sessionOf(catalogue: Catalogue): Session {
  const [first] = questionsOf(catalogue);
  return {
    catalogue,
    address: createAddressStore(browserAddress, first ?? { place: "page", page: "none", drafts: {} }),
    runs: createRunStore(httpClient, () => performance.now()),
    view: createViewStore(savedTheme(), savedUnits()),
  };
}

function Gone() {
  return (
    <main className="page-head" data-state="error">
      <h1>Wingseed does not answer</h1>
      <p className="answer">
        Start it again with <code>wingseed start</code>, then load this page anew.
      </p>
    </main>
  );
}
