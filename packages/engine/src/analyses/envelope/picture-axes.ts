export const speedAxis = { label: "true airspeed", quantity: "speed" } as const;
export const altitudeAxis = { label: "altitude", quantity: "length", datum: "above sea" } as const;
