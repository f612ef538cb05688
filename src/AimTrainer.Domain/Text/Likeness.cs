namespace AimTrainer.Domain;

/// <summary>Finds the word that somebody probably meant.</summary>
public static class Likeness
{
    private const int LongestWord = 40;

    /// <summary>The word with the fewest letters changed, added or left out, or null when none is alike.</summary>
    public static string? Nearest(string word, IEnumerable<string> words)
    {
        if (word.Length > LongestWord)
        {
            return null;
        }

        var best = words.Select(candidate => (Word: candidate, Changes: Changes(word, candidate)))
            .OrderBy(candidate => candidate.Changes).ThenBy(candidate => candidate.Word, StringComparer.Ordinal).FirstOrDefault();
        return best.Word is not null && best.Changes <= Math.Max(1, best.Word.Length / 3) ? best.Word : null;
    }

    // Levenshtein's distance, letters compared without their case, one row of the table at a time.
    private static int Changes(string from, string to)
    {
        var row = new int[to.Length + 1];
        for (var j = 0; j <= to.Length; j++)
        {
            row[j] = j;
        }

        for (var i = 1; i <= from.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= to.Length; j++)
            {
                var same = char.ToUpperInvariant(from[i - 1]) == char.ToUpperInvariant(to[j - 1]);
                var changed = Math.Min(Math.Min(row[j] + 1, row[j - 1] + 1), diagonal + (same ? 0 : 1));
                (diagonal, row[j]) = (row[j], changed);
            }
        }

        return row[to.Length];
    }
}
