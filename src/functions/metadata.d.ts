/**
 * The text of functions.json, out of the doc comments of a file. Error values may go into every parameter: without that, Excel calls no
 * function over a range that holds one #N/A, and shows the error in place of the whole class's marks (allowErrorForDataTypeAny on
 * Microsoft's page on the metadata of custom functions; custom-functions-metadata does not write it).
 */
export function functionsMetadata(file: string): Promise<{ json: string; errors: string[] }>
