using BallSim.Fuzz;

namespace BallSim.Files.Tests;

/// <summary>Replays every input of the fuzzer's corpus, its finds among them: each reader yields a value or a complaint, soon, and nothing else.</summary>
public class CorpusTests
{
    // Milliseconds are usual; this is for an input that hangs.
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(20);

    private static string Folder => Path.Combine(AppContext.BaseDirectory, "fuzz");

    public static TheoryData<string, string> Inputs()
    {
        var inputs = new TheoryData<string, string>();
        foreach (var reader in Readers.All.Keys)
        {
            foreach (var file in Directory.EnumerateFiles(Path.Combine(Folder, reader)).Order(StringComparer.Ordinal))
            {
                inputs.Add(reader, Path.GetFileName(file));
            }
        }
        return inputs;
    }

    [Theory]
    [MemberData(nameof(Inputs))]
    public async Task A_reader_yields_a_value_or_a_complaint(string reader, string input)
    {
        var bytes = await File.ReadAllBytesAsync(Path.Combine(Folder, reader, input));
        var told = await Task.Run(() => Readers.Told(reader, bytes)).WaitAsync(Longest);
        Assert.NotEmpty(told);
        Assert.DoesNotContain(told, char.IsControl);
        // Seeds are right, so that the fuzzer starts where readers go deep.
        Assert.True(!input.StartsWith("seed", StringComparison.Ordinal) || told == "read", told);
    }

    [Fact]
    public void Every_folder_of_the_corpus_has_its_reader() =>
        Assert.Equal(Readers.All.Keys, Directory.EnumerateDirectories(Folder).Select(d => Path.GetFileName(d)!).Where(d => d != "house").Order(StringComparer.Ordinal));
}
