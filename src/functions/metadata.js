import { generateCustomFunctionsMetadata } from 'custom-functions-metadata'

export async function functionsMetadata(file) {
  const { metadataJson, errors } = await generateCustomFunctionsMetadata(file)
  if (errors.length > 0) return { json: '', errors }
  const metadata = { allowErrorForDataTypeAny: true, ...JSON.parse(metadataJson) }
  return { json: JSON.stringify(metadata, null, 2), errors }
}
