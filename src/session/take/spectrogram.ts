export { SpectrogramTiles, type TilesWanted } from '../../compute/spectrogram/spectrogram-tiles'
