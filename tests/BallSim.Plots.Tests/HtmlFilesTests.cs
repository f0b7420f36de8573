using System.Text.RegularExpressions;

namespace BallSim.Plots.Tests;

public partial class HtmlFilesTests
{
    [Fact]
    public void A_page_fetches_nothing()
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".html");
        try
        {
            Throws.On(Throws.Oiled).LaneView().SaveHtml(path);
            var page = File.ReadAllText(path);
            // The script is inside, not referred to; what names an address outside the scripts, or asks for one in a tag, is a fault.
            Assert.Contains("plotly.js v", page);
            Assert.DoesNotMatch(FetchingTag(), page);
            var scripts = Script().Matches(page);
            Assert.DoesNotContain("://", Script().Replace(page, ""));
            // The last script draws the chart: our data name no address either.
            Assert.DoesNotContain("://", scripts[^1].Value);
            Assert.Contains("utf-8", page[..page.IndexOf("<body", StringComparison.Ordinal)]);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void A_page_needs_a_path() => Assert.Throws<ArgumentException>(() => Throws.On(Throws.Oiled).MotionCurves().SaveHtml(" "));

    [GeneratedRegex(@"<(script|link|img|iframe)\b[^>]*\b(src|href)\s*=")]
    private static partial Regex FetchingTag();

    [GeneratedRegex(@"<script[^>]*>.*?</script>", RegexOptions.Singleline)]
    private static partial Regex Script();
}
