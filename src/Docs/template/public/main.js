// Equations and reports are no program: only what names its language is coloured.
export default {
  configureHljs: hljs => hljs.configure({ languages: [] }),
}
