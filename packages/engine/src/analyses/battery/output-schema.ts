import { z } from "zod";
import { domainOutputs } from "../../published/index.ts";
import { quantity } from "../../quantities/index.ts";

const time = (description: string) => quantity("time", { description });
const volts = (description: string) => quantity("voltage", { description });
const amperes = (description: string) => quantity("current", { description });
const watts = (description: string) => quantity("power", { description });
const joules = (description: string) => quantity("energy", { description });
const warmth = (description: string) => quantity("temperature", { description });
const charge = (description: string) => quantity("capacity", { description });
const one = (description: string) => quantity("dimensionless", { description });

export const batteryRow = z.strictObject({
  time: time("Since the start."),
  voltage: volts("At the terminals, under the load that begins here; at the last row under the load that ends."),
  current: amperes("From the pack."),
  power: watts("At the terminals."),
  stateOfCharge: one("Charge left over charge when full, over all blocks on the bus."),
  temperature: warmth("Hottest block on the bus."),
  openCircuitVoltage: volts("At the terminals once all gradients are gone."),
  largestPower: watts("Largest power that the terminals can give at this instant."),
  blockCurrents: z.array(amperes("From the block; negative into it, 0 off the bus.")).meta({ description: "Current of each block." }),
});

export type BatteryRow = z.infer<typeof batteryRow>;

const limitTime = z.strictObject({
  name: z.string().meta({ description: "Name of the limit." }),
  time: time("When it is first passed; none when it is not.").nullable(),
  reason: z.string().meta({ description: "Why, in words." }),
  endsRun: z.boolean().meta({ description: "True when the run ends here." }),
});

const notDeliverable = z.strictObject({
  time: time("When the asked load can no longer be given."),
  because: z.string().meta({ description: "What forbids it." }),
  askedPower: watts("Power that was asked for; none when a current was.").nullable(),
  askedCurrent: amperes("Current that was asked for; none when a power was.").nullable(),
  askedHeld: time("How long this load had been held."),
  largestPower: watts("Largest power at this moment."),
  largestPowerDuration: time("How long 99 % of that power can be held from here."),
  largestCurrent: amperes("Largest current at this moment above the cut-off voltage."),
  sustained: z
    .array(z.strictObject({ duration: time("For so long."), power: watts("Largest constant power that can be held.") }))
    .meta({ description: "What can still be held from here." }),
});

const block = z.strictObject({
  block: z.int().meta({ description: "Which block, counted from 1." }),
  isolated: z.boolean().meta({ description: "True when it is off the bus." }),
  stateOfCharge: one("State of charge at the end."),
  temperature: warmth("Temperature at the end."),
  largestCurrent: amperes("Largest current."),
});

export const batteryOutputs = z.strictObject({
  endedBy: z.string().meta({ description: "What ends the run." }),
  duration: time("Until then."),
  timeToLimits: z.array(limitTime).meta({ description: "Every limit with the time at which it is passed." }),
  energyOut: joules("At the terminals."),
  energyLost: joules("In cells, isolators and wiring."),
  losses: z
    .strictObject({
      ohmic: joules("In the ohmic part of the cells."),
      relaxation: joules("In the relaxation pairs, counted as it is drawn."),
      diffusion: joules("Through the lag of the electrodes' surface."),
      isolators: joules("In the isolators."),
      wiring: joules("In the wiring."),
    })
    .meta({ description: "Where the lost energy goes." }),
  capacityDelivered: charge("Charge drawn at the terminals."),
  stateOfChargeAtEnd: one("State of charge at the end."),
  meanVoltage: volts("Energy out over charge out; none where no charge was drawn.").nullable(),
  startVoltage: volts("At rest before the start."),
  lowestVoltage: volts("Lowest voltage at the terminals."),
  highestTemperature: warmth("Hottest block at any time."),
  lowestTemperature: warmth("Coldest block at any time."),
  largestBlockCurrent: amperes("Largest current of one block."),
  largestChargingCurrent: amperes("Largest current into one block from its neighbours."),
  circulatedCharge: charge("Charge that went from blocks into their neighbours."),
  dip: z
    .strictObject({
      time: time("When the voltage under a constant load stands lowest before it rises."),
      voltage: volts("That voltage."),
      recovery: volts("How far it rises after that."),
    })
    .nullable()
    .meta({ description: "A dip of the voltage under a constant load that the cells' own heat mends." }),
  notDeliverable: notDeliverable.nullable().meta({ description: "Present when a load could not be given." }),
  blocks: z.array(block).meta({ description: "Each block." }),
  conditions: z
    .strictObject({
      cell: z.string().meta({ description: "The cell in words." }),
      capacity: charge("Of one new cell at 25 °C."),
      series: z.int().meta({ description: "Cells in series in a block." }),
      parallel: z.int().meta({ description: "Cells in parallel in a block." }),
      blocks: z.int().meta({ description: "Blocks on the bus." }),
      cutoffVoltage: volts("Lowest voltage at the terminals."),
      wiringResistance: quantity("resistance", { description: "In series with all blocks." }),
      thermalResistance: quantity("thermalResistance", { description: "One block to the air of the bay." }),
      bayTemperature: warmth("Air of the bay."),
      rate: one("Mean current of a block over its charge when new, per hour."),
    })
    .meta({ description: "What the run was computed with." }),
  bounds: z
    .strictObject({
      continuousCurrent: amperes("Of one block, without end.").nullable(),
      shortTimeCurrent: amperes("Of one block, for a short time.").nullable(),
      shortTime: time("How long the continuous current may be exceeded without a break."),
      temperatureMinimum: warmth("Coldest permitted cell.").nullable(),
      temperatureMaximum: warmth("Hottest permitted cell.").nullable(),
      lowestStateOfCharge: one("State of charge to be kept.").nullable(),
    })
    .meta({ description: "Limits that were watched; none where none is stated." }),
  energyBalance: one("Energy out and lost less the energy that the cells gave, over that energy and what blocks gave each other."),
  domain: domainOutputs,
  rows: z.array(batteryRow).meta({ description: "Over time." }),
});

export type BatteryOutputs = z.infer<typeof batteryOutputs>;
