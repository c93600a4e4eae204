import type { ElectricalNetwork } from "./electrical-network.ts";

type Loads = ElectricalNetwork["loads"];

/** What draws besides the motors. */
export interface NetworkUse {
  readonly lightsOn: boolean;
  /** Servos work hard. */
  readonly manoeuvring: boolean;
  /** Power of the payload at its bus [W]. */
  readonly payloadPower: number;
}

/** What one consumer costs: at its bus, and at the pack's terminals with the proportional losses on its way [W]. */
export interface ConsumerPower {
  readonly id: string;
  readonly kind: "load" | "payload" | "converter";
  readonly power: number;
  readonly atTerminals: number;
}

/** Power drawn at the pack's terminals by everything but the drive lines [W]; `consumers` add up to it. */
export interface NetworkPower {
  readonly atTerminals: number;
  readonly consumers: readonly ConsumerPower[];
}

const drawing =
  (use: NetworkUse) =>
  ({ when }: Loads[number]) =>
    when === "always" || (when === "lights" ? use.lightsOn : use.manoeuvring);

/** What a bus takes with everything behind it [W]. */
function busPower(network: ElectricalNetwork, bus: string, drawn: (load: Loads[number]) => boolean, payloadPower: number): number {
  let power = bus === network.payloadBus ? payloadPower : 0;
  for (const load of network.loads) if (load.bus === bus && drawn(load)) power += load.power;
  for (const { from, to, proportionalLoss, constantLoss } of network.converters) {
    if (from === bus) power += busPower(network, to, drawn, payloadPower) * (1 + proportionalLoss) + constantLoss;
  }
  return power;
}

/** Power drawn at the pack's terminals: the network must be a tree from its first bus, as a checked file has it [W]. */
export function terminalPower(network: ElectricalNetwork, use: NetworkUse): number {
  return busPower(network, network.buses[0]?.id ?? "", drawing(use), use.payloadPower);
}

/** The same by consumer: each pays the shares lost on its way, converters pay their constant loss. */
export function networkPower(network: ElectricalNetwork, use: NetworkUse): NetworkPower {
  const draws = drawing(use);
  const consumer = (kind: ConsumerPower["kind"], id: string, bus: string, power: number): ConsumerPower => ({
    id,
    kind,
    power,
    atTerminals: power * paidOnTheWay(network, bus),
  });
  const consumers = [
    ...network.loads.filter(draws).map(({ id, bus, power }) => consumer("load", id, bus, power)),
    consumer("payload", "payload", network.payloadBus, use.payloadPower),
    ...network.converters.map(({ id, from, constantLoss }) => consumer("converter", id, from, constantLoss)),
  ];
  return { atTerminals: terminalPower(network, use), consumers };
}

/** What a watt at a bus costs at the terminals. */
function paidOnTheWay(network: ElectricalNetwork, bus: string): number {
  const feeding = network.converters.find(({ to }) => to === bus);
  return feeding === undefined ? 1 : (1 + feeding.proportionalLoss) * paidOnTheWay(network, feeding.from);
}

/** Power that the emergency battery gives when the pack is lost, payload shed [W]; undefined without such a battery. */
export function emergencyPower(network: ElectricalNetwork, use: Omit<NetworkUse, "payloadPower">): number | undefined {
  if (network.emergency === undefined) return undefined;
  const draws = drawing({ ...use, payloadPower: 0 });
  return busPower(network, network.emergency.bus, (load) => load.emergency && draws(load), 0);
}
