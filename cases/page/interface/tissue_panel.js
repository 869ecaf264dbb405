// What fills the gap, from nothing to bone, on a logarithmic slider. Tissue is links only, so each place is exact.
class TissuePanel {
  // `edit(edit, saying)` changes the case; `preview(edit)` shows what it would do while the slider is held.
  constructor(container, edit, preview) {
    Object.assign(this, {container, edit, preview});
  }

  show(opened, answer) {
    const tissues = opened.tissues;
    const range = document.activeElement?.id === "tissue-place" ? byId("tissue-place") : undefined;
    const log = (modulus) => Math.log10(modulus);
    const low = log(tissues[0].modulus_mpa) - 0.5, high = log(tissues.at(-1).modulus_mpa), steps = 60;
    const modulusAt = (place) => Number((10 ** (low + (high - low) * place / steps)).toPrecision(3));
    const tissue = answer.tissue;
    const place = tissue ? Math.max(1, Math.round(steps * (log(tissue.modulus_mpa) - low) / (high - low))) : 0;
    const near = (modulus) => tissues.reduce(
        (best, one) =>
            (Math.abs(log(one.modulus_mpa / modulus)) < Math.abs(log(best.modulus_mpa / modulus)) ? one : best));
    const words = (at) =>
        (at === 0 ? "nothing" : `tissue of ${threeDigits(modulusAt(at))} MPa (near ${near(modulusAt(at)).name})`);
    const editAt = (at) => ({do: "fill_gap", ...(at === 0 ? {tissue: "none"} : {modulus_mpa: modulusAt(at)})});
    const says = tissue ?
        `${tissue.name && tissues.some((one) => one.name === tissue.name) ? tissue.name : "tissue"} of ${
            threeDigits(tissue.modulus_mpa)} MPa` :
        "nothing";
    if (range && range.dataset.held) {  // under a hand: only the words
      byId("tissue-says").textContent = says;
      return;
    }
    const shown = element("output", {id: "tissue-says", "for": "tissue-place"}, says);
    const slider = element("input", {
      type: "range",
      id: "tissue-place",
      "data-key": "tissue",
      min: 0,
      max: steps,
      step: 1,
      value: place,
      "aria-valuetext": says
    });
    slider.addEventListener("input", () => {
      const at = Number(slider.value);
      slider.dataset.held = "yes";
      shown.textContent = words(at);
      slider.setAttribute("aria-valuetext", words(at));
      this.preview(editAt(at));
    });
    whenLetGo(slider, () => {
      const at = Number(slider.value);
      this.edit(editAt(at), `Gap filled with ${words(at)}`);
    });
    const named = (name, text, pressed) => button(
        `tissue-${name}`, text, () => this.edit({do: "fill_gap", tissue: name}, `Gap filled with ${text}`),
        {"aria-pressed": pressed ? "true" : "false"});
    fill(
        this.container, element("h2", {id: "tissue-heading"}, "What fills the gap"),
        element("label", {"for": "tissue-place"}, "Filled with ", shown), slider,
        element(
            "div", {class: "bar tissues"}, named("none", "nothing", !tissue),
            tissues.map(
                (one) => named(
                    one.name, one.name.replaceAll("-", " ").replaceAll("_", " "), tissue?.name === one.name))));
  }
}
