/** The part of JSON Schema 2020-12 that fields write into the document. */
export interface JsonSchema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly format?: string;
  readonly description?: string;
  readonly enum?: readonly (string | number | null)[];
  readonly pattern?: string;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly items?: JsonSchema;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly uniqueItems?: boolean;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | JsonSchema;
  readonly propertyNames?: JsonSchema;
  readonly minProperties?: number;
  readonly maxProperties?: number;
  readonly oneOf?: readonly JsonSchema[];
  readonly anyOf?: readonly JsonSchema[];
  readonly discriminator?: {
    readonly propertyName: string;
    readonly mapping?: Readonly<Record<string, string>>;
  };
  readonly default?: unknown;
  readonly examples?: readonly unknown[];
  readonly 'x-open-enum'?: boolean;
}

/** Names the components a schema refers to; each name is then written once into the document. */
export interface SchemaNames {
  /** Reference to the component of a class whose members are fields. */
  ofClass(type: FieldClass): JsonSchema;
  /** Reference to a component written out by the caller. */
  ofSchema(name: string, schema: JsonSchema): JsonSchema;
}

/** A class whose members are declared with fields; it is made without arguments. */
export type FieldClass<T extends object = object> = new () => T;
