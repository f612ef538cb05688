using System.Globalization;

namespace AimTrainer.Domain;

/// <summary>
/// A JSON file that a person wrote: its values with their places, and everything that is wrong with it, gathered until somebody
/// asks. Stricter than JSON needs: no comments, no comma after the last value, no name twice in one object.
/// </summary>
public sealed class JsonFile
{
    /// <summary>Largest file, in bytes: 1 MiB.</summary>
    public const int MostBytes = 1 << 20;

    /// <summary>How many objects and lists may stand inside one another.</summary>
    public const int MostDepth = 32;

    /// <summary>How many problems are told; any more are only counted, so that a hopeless file cannot fill the memory.</summary>
    public const int MostProblems = 500;

    private readonly List<(int Offset, FileProblem Problem)> _problems = [];
    private int _untold;

    private JsonFile(string name) => Name = name;

    /// <summary>The file as the user named it.</summary>
    public string Name { get; }

    /// <summary>The outermost value; null when the file is not JSON, which <see cref="Problems"/> then says.</summary>
    public JsonNode? Root { get; private set; }

    /// <summary>Whether anything is wrong so far.</summary>
    public bool HasProblems => _problems.Count > 0;

    /// <summary>How many problems there are so far, told or only counted.</summary>
    public int ProblemCount => _problems.Count + _untold;

    /// <summary>Whether further problems are only counted.</summary>
    internal bool IsFull => _problems.Count >= MostProblems;

    /// <summary>Everything that is wrong so far, in the file's order.</summary>
    public ValueList<FileProblem> Problems
    {
        get
        {
            var told = _problems.OrderBy(problem => problem.Offset).Select(problem => problem.Problem);
            return _untold == 0
                ? told.ToValueList()
                : told.Append(new FileProblem(Name, 0, "", Invariant($"{_untold} more problems"), "correct those above first")).ToValueList();
        }
    }

    /// <summary>Reads a file as far as JSON goes.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file.</param>
    public static JsonFile Read(string fileName, ReadOnlySpan<byte> utf8)
    {
        var file = new JsonFile(fileName);
        if (Utf8File.Refusal(utf8, MostBytes) is { } refusal)
        {
            file.Report(new JsonPlace(0, 0, 0, ""), refusal.Found, refusal.Allowed);
        }
        else
        {
            file.Root = JsonTree.Build(Utf8File.WithoutMark(utf8), file);
        }

        return file;
    }

    /// <summary>Notes that something is wrong.</summary>
    /// <param name="at">Where.</param>
    /// <param name="found">What was found.</param>
    /// <param name="allowed">What is allowed, or what to do.</param>
    public void Report(JsonPlace at, string found, string allowed)
    {
        if (!IsFull)
        {
            _problems.Add((at.Offset, new FileProblem(Name, at.Line, at.Path, found, allowed)));
        }
        else
        {
            _untold++;
        }
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
