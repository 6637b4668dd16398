import { liveCost } from '../live-cost'

postMessage(liveCost())
