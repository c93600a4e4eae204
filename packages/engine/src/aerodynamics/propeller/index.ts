export { type MomentumPropeller, type PropellerState, propellerState } from "./momentum-propeller.ts";
