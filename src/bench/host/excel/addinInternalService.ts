import { HostObject } from '../hostObject'

/** A service that the client calls when it starts. */
export class AddinInternalService extends HostObject {
  static override readonly className = 'AddinInternalService'

  notifyActionHandlerReady() {
    return null
  }
}
