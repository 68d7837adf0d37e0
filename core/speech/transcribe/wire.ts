import Pbf from "pbf";

/** A field of a protocol buffer message as it stands there, its tag before it; its content where that has a length. */
export type Field = {
  readonly number: number;
  readonly whole: Uint8Array;
  readonly content: Uint8Array;
};

/** Cuts a message into its fields (protobuf.dev/programming-guides/encoding). Throws where it is none. */
export function fieldsOf(message: Uint8Array): readonly Field[] {
  const fields: Field[] = [];
  const reader = new Pbf(message);
  let from = 0;
  const read = (number: number): void => {
    const content = reader.type === lengthDelimited ? reader.readBytes() : noBytes;
    if (reader.type !== lengthDelimited) reader.skip(reader.type);
    fields.push({ number, content, whole: message.subarray(from, reader.pos) });
    from = reader.pos;
  };
  reader.readFields(read, null);
  return fields;
}

/** The contents of every field of a number, in order. */
export const contentsOf = (fields: readonly Field[], number: number): readonly Uint8Array[] =>
  fields.flatMap((field) => (field.number === number ? [field.content] : []));

/** The texts of every field of a number, in order. */
export const textsOf = (fields: readonly Field[], number: number): readonly string[] =>
  contentsOf(fields, number).map((content) => String.fromCharCode(...content));

/** The whole numbers of every field of a number, one each or packed. */
export function numbersOf(fields: readonly Field[], number: number): readonly number[] {
  const numbers: number[] = [];
  for (const { whole } of fields.filter((field) => field.number === number))
    new Pbf(whole).readFields((_, into, reader) => reader.readPackedVarint(into), numbers);
  return numbers;
}

/** A field of a message, bytes or a message itself. */
export function fieldOf(number: number, content: Uint8Array): Field {
  const writer = new Pbf();
  writer.writeBytesField(number, content);
  return { number, content, whole: writer.finish() };
}

/** A field that holds a text of plain letters. */
export const textField = (number: number, text: string): Field =>
  fieldOf(
    number,
    Uint8Array.from(text, (letter) => letter.charCodeAt(0)),
  );

/** A field that holds a whole number. */
export function numberField(number: number, value: number): Field {
  const writer = new Pbf();
  writer.writeVarintField(number, value);
  return { number, content: noBytes, whole: writer.finish() };
}

/** A message of these fields. */
export function messageOf(fields: readonly Field[]): Uint8Array {
  const message = new Uint8Array(fields.reduce((sum, { whole }) => sum + whole.length, 0));
  let at = 0;
  for (const { whole } of fields) {
    message.set(whole, at);
    at += whole.length;
  }
  return message;
}

const lengthDelimited = 2;
const noBytes = new Uint8Array();
