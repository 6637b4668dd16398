import { useApp, useView } from '../../context/app-context'

/** Opens and closes the lane of the spectrogram. */
export function SpectrogramSwitch() {
  const { view } = useApp()
  const isOpen = useView((state) => state.spectrogram)
  return (
    <button
      type="button"
      data-look="bare"
      aria-expanded={isOpen}
      onClick={() => view.setState({ spectrogram: !isOpen })}
    >
      Spectrogram
      <span aria-hidden="true"> {isOpen ? '▴' : '▾'}</span>
    </button>
  )
}
