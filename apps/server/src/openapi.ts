import type { JsonSchema, Registry } from "@wingseed/runner";

const json = (schema: unknown) => ({ "application/json": { schema } });
const problem = { description: "Why there is no answer", content: json({ $ref: "#/components/schemas/Refusal" }) };

/** The description of the interface, made from the schemas of the analyses; one entry for each of them. */
export function openApi(registry: Registry, version: string): unknown {
  const calls = registry.analyses.map(({ name, question, method, example }) => [
    `/api/analyses/${name}/run`,
    {
      post: {
        operationId: `run-${name}`,
        summary: question,
        description: `${method.summary} Numbers are SI and radians; a number with a quantity may also be a text with its unit.`,
        requestBody: {
          content: { "application/json": { schema: withUnits(embedded(registry.inputSchema(name), `${name}-inputs`)), example } },
        },
        responses: {
          200: { description: "The result", content: json(resultSchema(embedded(registry.outputSchema(name), `${name}-outputs`))) },
          404: problem,
          422: problem,
        },
      },
    },
  ]);
  return {
    openapi: "3.1.0",
    info: { title: "Wingseed", version, license: { name: "Apache-2.0", identifier: "Apache-2.0" } },
    paths: { ...Object.fromEntries(calls), ...runPaths },
    components: {
      schemas: {
        Problem: { type: "object", required: ["kind", "message"], properties: { kind: { type: "string" }, message: { type: "string" } } },
        Refusal: { type: "object", required: ["problem"], properties: { problem: { $ref: "#/components/schemas/Problem" } } },
      },
    },
  };
}

const runPaths = {
  "/api/runs": {
    post: {
      operationId: "begin-run",
      summary: "Starts a run; its events are read under its id.",
      requestBody: {
        content: json({
          type: "object",
          required: ["analysis"],
          properties: {
            analysis: { type: "string" },
            inputs: { type: "object" },
            cases: { type: "array", items: { type: "object" }, minItems: 1 },
            sweep: { type: "object", additionalProperties: { type: "array", minItems: 1 } },
          },
        }),
      },
      responses: {
        201: { description: "Begun", content: json({ type: "object", properties: { id: { type: "string" } } }) },
        400: problem,
        404: problem,
      },
    },
  },
  "/api/runs/{id}/events": {
    get: {
      operationId: "follow-run",
      summary: "Events progress, partial, result and problem. Closing the stream stops the run.",
      parameters: [{ name: "id", in: "path", required: true, schema: { type: "string" } }],
      responses: { 200: { description: "The stream", content: { "text/event-stream": { schema: { type: "string" } } } }, 404: problem },
    },
  },
  "/api/runs/{id}": {
    delete: {
      operationId: "stop-run",
      parameters: [{ name: "id", in: "path", required: true, schema: { type: "string" } }],
      responses: { 204: { description: "Stopped" }, 404: problem },
    },
  },
};

/** The one shape of every result, with the outputs of one analysis. */
export function resultSchema(outputs: unknown): JsonSchema {
  const problemSchema = {
    type: "object",
    required: ["kind", "message"],
    properties: { kind: { type: "string" }, message: { type: "string" } },
  };
  const oneCase = {
    type: "object",
    required: ["inputs"],
    properties: { inputs: {}, outputs, problem: problemSchema },
    oneOf: [{ required: ["outputs"] }, { required: ["problem"] }],
  };
  return {
    type: "object",
    required: ["analysis", "cases", "warnings", "provenance"],
    properties: {
      analysis: { type: "string" },
      cases: { type: "array", items: oneCase },
      warnings: {
        type: "array",
        items: {
          type: "object",
          required: ["kind", "message", "grade"],
          properties: { kind: { type: "string" }, message: { type: "string" }, grade: { enum: ["care", "note"] } },
        },
      },
      provenance: { type: "object" },
    },
  };
}

/** A schema as a part of another document: its own name, so that references inside stay inside. */
function embedded({ $schema: _draft, ...schema }: JsonSchema, name: string): JsonSchema {
  return { $id: `urn:wingseed:${name}`, ...schema };
}

/** The same schema with every quantity also as a text that carries its unit. */
function withUnits(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(withUnits);
  if (typeof schema !== "object" || schema === null) return schema;
  const walked = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, withUnits(value)]));
  if (typeof walked.quantity !== "string") return walked;
  const { description, ...number } = walked;
  return { description, anyOf: [number, { type: "string", description: `A ${walked.quantity} with its unit.` }] };
}
