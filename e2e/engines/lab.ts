import { AppPage } from './app-page'
import { starters } from './drive'
import type { Engine, EngineName } from './drive/engine'
import type { Surroundings } from './surroundings'

/** Fresh pages in one engine; its browser is started when one is wanted, and anew after one that was given up. */
export class Lab {
  private engine: Engine | null = null

  constructor(
    readonly name: EngineName,
    private readonly address: string,
    readonly surroundings: Surroundings,
  ) {}

  async start(): Promise<Engine> {
    this.engine ??= await starters[this.name](this.surroundings)
    return this.engine
  }

  /** The app, just loaded, with its first figures. */
  async freshPage(): Promise<AppPage> {
    return AppPage.open(await this.start(), this.address)
  }

  async complaintsAtLoad(): Promise<readonly string[]> {
    return (await this.start()).complaintsAtLoad(this.address)
  }

  /** Ends the browser, whatever state it is in. */
  giveUp(): void {
    this.engine?.end()
    this.engine = null
  }
}
