import { type Complain, uniqueIds, unknown } from "./complaint.ts";
import type { ElectricalNetwork } from "./electrical-network.ts";

/** Buses hang from the pack's terminals as a tree: each but the first is fed by one converter. */
export function networkChecks(network: ElectricalNetwork, complain: Complain): void {
  const { buses, converters, loads, payloadBus, emergency } = network;
  const at = (path: readonly (string | number)[], message: string) => complain(["electrical", ...path], message);
  const names = buses.map(({ id }) => id);
  const bus = (path: readonly (string | number)[], name: string) => {
    if (!names.includes(name)) at(path, unknown("bus", name, names));
  };
  uniqueIds({ buses, converters, loads }, at);
  converters.forEach(({ from, to }, index) => {
    bus(["converters", index, "from"], from);
    bus(["converters", index, "to"], to);
    if (to === names[0]) at(["converters", index, "to"], `${to} is at the pack's terminals: the pack feeds it`);
    const first = converters.findIndex((one) => one.to === to);
    if (first < index) at(["converters", index, "to"], `${to} is fed by ${converters[first]?.id} already`);
  });
  const fed = reached(network);
  names.forEach((name, index) => {
    if (fed.has(name)) return;
    const feeding = converters.find(({ to }) => to === name);
    const behind = feeding !== undefined && reached(network, name).has(feeding.from) ? "which it feeds itself" : "which nothing feeds";
    const reason = feeding === undefined ? "no converter feeds it" : `${feeding.id} feeds it from ${feeding.from}, ${behind}`;
    at(["buses", index, "id"], `${name} is not fed from ${names[0]}: ${reason}`);
  });
  const rescued = emergency === undefined ? undefined : reached(network, emergency.bus);
  loads.forEach((load, index) => {
    bus(["loads", index, "bus"], load.bus);
    if (load.emergency && rescued === undefined) at(["loads", index, "emergency"], "there is no emergency battery");
    else if (load.emergency && rescued?.has(load.bus) === false && names.includes(load.bus))
      at(["loads", index, "emergency"], `the emergency battery feeds ${emergency?.bus}, not ${load.bus}`);
  });
  bus(["payloadBus"], payloadBus);
  if (emergency !== undefined) bus(["emergency", "bus"], emergency.bus);
}

/** Everything that a bus feeds, and itself. */
function reached({ buses, converters }: ElectricalNetwork, from = buses[0]?.id): Set<string> {
  const fed = new Set<string>(from === undefined ? [] : [from]);
  for (const name of fed) for (const converter of converters) if (converter.from === name) fed.add(converter.to);
  return fed;
}
