import { z } from "zod";
import { fraction, notNegative, positive } from "./bounds.ts";
import { partId } from "./part-id.ts";

const load = z.strictObject({
  id: partId,
  bus: partId.describe("Bus or rail that feeds it."),
  power: notNegative("power", "Power it takes at its bus."),
  when: z
    .enum(["always", "lights", "manoeuvre"])
    .default("always")
    .describe("When it draws: always, with the lights switched on, or only while servos work hard."),
  emergency: z.boolean().default(false).describe("Fed by the emergency battery too."),
});

/** The electrical network: buses, converters between them, loads, and what feeds them when the pack is lost. */
export const electricalNetwork = z.strictObject({
  buses: z
    .array(z.strictObject({ id: partId, voltage: positive("voltage", "Nominal voltage.") }))
    .min(1)
    .describe("Rails; the first one is at the pack's terminals."),
  converters: z
    .array(
      z.strictObject({
        id: partId,
        from: partId.describe("Bus it draws from."),
        to: partId.describe("Bus it feeds."),
        constantLoss: notNegative("power", "Loss whenever it runs."),
        proportionalLoss: notNegative("dimensionless", "Loss as a share of what it gives."),
      }),
    )
    .default([])
    .describe("Between buses; each bus but the first is fed by one."),
  loads: z.array(load).default([]).describe("Consumers other than drive lines and payload."),
  payloadBus: partId.describe("Bus that feeds payloads."),
  emergency: z
    .strictObject({
      bus: partId.describe("Bus it takes over."),
      energy: positive("energy", "Energy when full."),
      resistance: positive("resistance", "Inner resistance."),
      capacityFactorCold: fraction("Share of the energy left at -10 °C."),
      switchoverTime: notNegative("time", "Until it has taken over."),
    })
    .optional()
    .describe("Battery that feeds the emergency loads alone."),
});

export type ElectricalNetwork = z.infer<typeof electricalNetwork>;
