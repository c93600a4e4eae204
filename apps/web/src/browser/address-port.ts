import type { AddressPort } from "../model/address-store.ts";

/** The browser's own address bar and history. */
export const browserAddress: AddressPort = {
  read: () => location.hash,
  push: (fragment) => history.pushState(null, "", fragment),
  replace: (fragment) => history.replaceState(null, "", fragment),
  listen(changed) {
    addEventListener("popstate", changed);
    addEventListener("hashchange", changed);
  },
};
