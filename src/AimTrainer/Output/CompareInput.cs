using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>The throws of a file: each once, one bowler's only.</summary>
/// <param name="Throws">In the order of the file.</param>
/// <param name="Bowler">Whose; null when the file names nobody.</param>
/// <param name="Repeated">Shots that were there before.</param>
/// <param name="OfOthers">Shots of other bowlers, left out.</param>
/// <param name="Unreadable">Rows that could not be read.</param>
/// <param name="Lines">Line in the file of each shot, by its number.</param>
internal sealed record CompareInput(
    IReadOnlyList<ComparedThrow> Throws, string? Bowler, int Repeated, int OfOthers, int Unreadable, IReadOnlyDictionary<int, int> Lines)
{
    /// <summary>Reads; whatever cannot be read is reported.</summary>
    /// <exception cref="UserException">No shot could be read.</exception>
    public static CompareInput Read(IEnumerable<FeedItem> items, string file, string? bowler, Action<FileProblem> report)
    {
        var (throws, lines, seen) = (new List<ComparedThrow>(), new Dictionary<int, int>(), new DuplicateShots());
        var (repeated, others, unreadable) = (0, 0, 0);
        foreach (var item in items)
        {
            if (item is FeedItem.Unreadable { Problem: var problem })
            {
                unreadable++;
                report(problem);
            }
            else if (item is FeedItem.ShotRead read)
            {
                bowler ??= read.Bowler;
                if (read.Bowler is not null && !string.Equals(read.Bowler, bowler, StringComparison.OrdinalIgnoreCase))
                {
                    others++;
                }
                else if (!seen.Add(read.Shot))
                {
                    repeated++;
                }
                else
                {
                    throws.Add(new ComparedThrow(throws.Count + 1, read.Shot, read.Shot.Ball, read.LineName));
                    lines.Add(throws.Count, read.Line);
                }
            }
        }

        return throws.Count > 0
            ? new CompareInput(throws, bowler, repeated, others, unreadable, lines)
            : throw new UserException($"{file}: no shot in it could be read{(unreadable > 0 ? ", see above" : "")}"
                + $"{(others > 0 ? $"; {Words.Count(others, "shot")} not of {bowler}" : "")}");
    }

    /// <summary>"shot 3 (line 4)".</summary>
    public string Where(ExcludedThrow one) => $"shot {one.Number} (line {Lines[one.Number]})";
}
