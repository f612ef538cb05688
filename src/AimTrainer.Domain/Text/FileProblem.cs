using System.Globalization;

namespace AimTrainer.Domain;

/// <summary>One thing that is wrong in a file: where, what was found, and what may be there.</summary>
/// <param name="File">The file as the user named it.</param>
/// <param name="Line">Line, from 1; 0 when it is the file as a whole.</param>
/// <param name="Path">JSON path (<c>$.blocks[0].name</c>) or column heading; empty when there is none.</param>
/// <param name="Found">What was found.</param>
/// <param name="Allowed">What is allowed, or what to do.</param>
public sealed record FileProblem(string File, int Line, string Path, string Found, string Allowed)
{
    /// <summary>One line for a person: <c>file:line: path: found …; allowed: …</c>.</summary>
    public override string ToString()
    {
        var line = Line > 0 ? $":{Line.ToString(CultureInfo.InvariantCulture)}" : "";
        var path = Path.Length > 0 ? $" {Path}:" : "";
        return $"{File}{line}:{path} found {Found}; allowed: {Allowed}";
    }
}
