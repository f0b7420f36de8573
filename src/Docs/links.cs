#:property PublishAot=false
#:property PackAsTool=false
// Follows every link of a finished site within it: dotnet run src/Docs/links.cs -- FOLDER. A page that is not there, a mark within a page that is not there, a picture that is not there: each is told, and the program ends with 1.
// Addresses elsewhere are not asked for, only their form is looked at.
using System.Net;
using System.Text.RegularExpressions;

var site = args.Length == 1 ? Path.GetFullPath(args[0]) : throw new ArgumentException("name the folder of the site");
var pages = Directory.EnumerateFiles(site, "*.html", SearchOption.AllDirectories).ToDictionary(f => f, File.ReadAllText);
var marks = pages.ToDictionary(p => p.Key, p => Regex.Matches(p.Value, """\s(?:id|name)="([^"]+)""").Select(m => WebUtility.HtmlDecode(m.Groups[1].Value)).ToHashSet());
var broken = new List<string>();
var followed = 0;
foreach (var (page, text) in pages)
{
    foreach (var link in Regex.Matches(text, """<(?:a|img|link|script|source)\b[^>]*?\s(?:href|src)="([^"]*)""").Select(m => WebUtility.HtmlDecode(m.Groups[1].Value)).Distinct())
    {
        followed++;
        if (link.StartsWith("https://", StringComparison.Ordinal) || link.StartsWith("data:", StringComparison.Ordinal))
        {
            if (!Uri.IsWellFormedUriString(link, UriKind.Absolute))
            {
                broken.Add($"{Path.GetRelativePath(site, page)}: {link} is no address");
            }
            continue;
        }
        var parts = link.Split('#', 2);
        var target = parts[0].Length == 0 ? page : Path.GetFullPath(Path.Combine(Path.GetDirectoryName(page)!, Uri.UnescapeDataString(parts[0])));
        target = Directory.Exists(target) ? Path.Combine(target, "index.html") : target;
        if (!File.Exists(target))
        {
            broken.Add($"{Path.GetRelativePath(site, page)}: {link} is not there");
        }
        else if (parts.Length == 2 && parts[1].Length > 0 && marks.TryGetValue(target, out var known) && !known.Contains(Uri.UnescapeDataString(parts[1])))
        {
            broken.Add($"{Path.GetRelativePath(site, page)}: {link}: no such mark");
        }
    }
}
broken.ForEach(Console.WriteLine);
Console.WriteLine($"{pages.Count} pages, {followed} links, {broken.Count} broken");
return broken.Count == 0 && pages.Count > 0 ? 0 : 1;
