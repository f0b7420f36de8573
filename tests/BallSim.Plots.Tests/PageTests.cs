using System.Text.RegularExpressions;
using BallSim.Plots.Pages;
using BallSim.Shots;

namespace BallSim.Plots.Tests;

public partial class PageTests
{
    private const string Hostile = "</script><img src=x onerror=alert(1)>&\"'";

    [Fact]
    public void A_name_from_a_file_stays_a_name()
    {
        var shot = Throws.Drilled();
        var row = Comparison.Of([new Candidate(shot.Ball, Throws.Oiled, Throws.Usual) { BallName = Hostile, LayoutName = Hostile, LaneName = Hostile, ReleaseName = Hostile, FinishName = Hostile }]);
        string[] pages =
        [
            new ComparisonPage { Title = Hostile, Bowler = Hostile, Rows = row, Sheets = [new(Hostile, Throws.Sheet())] }.ToHtml(),
            shot.LaneView(Hostile).ToHtml(), new[] { shot, shot }.MotionCurves([Hostile, "other"]).ToHtml(),
        ];
        foreach (var page in pages)
        {
            var outside = Script().Replace(page, "");
            Assert.DoesNotContain("<img", outside);
            Assert.DoesNotContain("<script", outside);
            Assert.DoesNotContain("</script", outside);
            Assert.Contains("&lt;img", outside);
        }
    }

    [Fact]
    public void A_page_without_rows_is_refused() =>
        Assert.Contains("at least one row", Assert.Throws<ArgumentException>(() => new ComparisonPage { Title = "", Rows = [] }.ToHtml()).Message);

    [Fact]
    public void A_failed_write_leaves_what_was_there()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var path = Path.Combine(folder.FullName, "nowhere", "page.html");
            Assert.ThrowsAny<IOException>(() => Throws.Drilled().LaneView().SaveHtml(path));
            path = Path.Combine(folder.FullName, "page.html");
            File.WriteAllText(path, "old");
            Throws.Drilled().LaneView().SaveHtml(path);
            Assert.StartsWith("<!DOCTYPE html>", File.ReadAllText(path));
            Assert.Single(folder.GetFiles());
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [GeneratedRegex("<script[^>]*>.*?</script>", RegexOptions.Singleline)]
    private static partial Regex Script();
}
