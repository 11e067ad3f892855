/** An error that the host reports to the client, with the code Excel documents for it. */
export class HostError extends Error {
  constructor(
    /** Excel's error code, such as `ItemNotFound`. */
    readonly code: string,
    message: string,
    /** The HTTP status that goes with the code on the wire. */
    readonly status = 400,
  ) {
    super(message)
  }
}

/** The thing asked for does not exist. */
export const itemNotFound = () => new HostError('ItemNotFound', "The requested resource doesn't exist.", 404)

/** A name is taken already. */
export const itemAlreadyExists = () =>
  new HostError('ItemAlreadyExists', 'A resource with the same name or identifier already exists.', 409)

/** An argument has the wrong form. */
export const invalidArgument = (message = 'The argument is invalid or missing or has an incorrect format.') =>
  new HostError('InvalidArgument', message)

/** A matrix does not fit its range. */
export const wrongSize = () =>
  invalidArgument(
    "The number of rows or columns in the input array doesn't match the size or dimensions of the range.",
  )

/** The sheet is protected. */
export const accessDenied = () =>
  new HostError('AccessDenied', "You can't perform the requested operation.", 403)

/** The operation does not suit the object. */
export const invalidOperation = () =>
  new HostError('InvalidOperation', 'This operation is not permitted for the current object.')

/** The bench has no such member; `member` names it as Class.member. */
export const notOnBench = (member: string) =>
  new HostError('ApiNotFound', `The bench host does not implement ${member}.`, 404)

/** The user is typing in a cell. */
export const inCellEditMode = () =>
  new HostError(
    'InvalidOperationInCellEditMode',
    'Excel is in cell-editing mode. Please exit the edit mode by pressing ENTER or TAB or selecting another cell, and then try again.',
  )

/** There is no printer to ask. */
export const noPrinter = () =>
  new HostError('GeneralException', 'There was an internal error while processing the request.', 500)
