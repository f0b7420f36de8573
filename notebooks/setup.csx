// What every notebook starts with. It runs in the .NET (C#) kernel of Jupyter; build once before: dotnet build -c Release
// The tests run the notebooks without that kernel and take only the using lines below from here.
#r "../src/BallSim.Plots/bin/Release/net10.0/BallSim.dll"
#r "../src/BallSim.Plots/bin/Release/net10.0/BallSim.Plots.dll"
#r "../src/BallSim.Plots/bin/Release/net10.0/DynamicObj.dll"
#r "../src/BallSim.Plots/bin/Release/net10.0/Plotly.NET.dll"

using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Runtime.Loader;
using BallSim;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Ensembles;
using BallSim.Fitting;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Plots;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Sweeps;
using static BallSim.Units;

// The kernel carries an FSharp.Core that is older than the one the charts were built against. So the charts and what they need are loaded in a context of their own, and whoever asks
// for them by name gets those; FSharp.Core itself is not handed out, or the kernel would meet two of them.
var output = Path.GetFullPath("../src/BallSim.Plots/bin/Release/net10.0");
var charts = new AssemblyLoadContext("charts");
var shared = new[] { "FSharp.Core", "DynamicObj", "Fable.Core", "Giraffe.ViewEngine", "Plotly.NET", "Plotly.NET.CSharp" }
    .ToDictionary(name => name, name => charts.LoadFromAssemblyPath(Path.Combine(output, name + ".dll")));
AssemblyLoadContext.Default.Resolving += (_, wanted) => wanted.Name != "FSharp.Core" && shared.TryGetValue(wanted.Name, out var found) ? found : null;

// A chart is shown as a page in a frame: it carries its drawing script, and no part of the notebook can disturb it. The type is asked of the method that takes it, because the name alone may
// mean the kernel's copy.
var toHtml = typeof(HtmlFiles).GetMethod("ToHtml");
// The frame takes its chart's height, whenever that comes: charts are drawn after the page has loaded.
var fit = "const body = this.contentDocument.body, fit = () => this.height = body.scrollHeight + 20; new this.contentWindow.ResizeObserver(fit).observe(body); fit()";
Microsoft.DotNet.Interactive.Formatting.Formatter.Register(
    toHtml.GetParameters()[0].ParameterType,
    (chart, writer) => writer.Write($"<iframe width=\"100%\" height=\"640\" style=\"border:0\" onload=\"{fit}\" srcdoc=\"{System.Net.WebUtility.HtmlEncode((string)toHtml.Invoke(null, new[] { chart }))}\"></iframe>"),
    "text/html");
