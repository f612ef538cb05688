using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>Finds a theme: one of the program's own by its name, or a user's by its file.</summary>
internal static class DisplayThemes
{
    /// <exception cref="UserException">There is none, or it has mistakes: each is named.</exception>
    public static Theme Read(string? nameOrFile)
    {
        if (nameOrFile is null)
        {
            return ThemeLibrary.Default;
        }

        if (File.Exists(nameOrFile) || Directory.Exists(nameOrFile))
        {
            var read = ThemeReader.Read(nameOrFile, UserFiles.ReadAllBytes(nameOrFile));
            return read.Value ?? throw UserException.Of(read.Problems);
        }

        var names = ThemeLibrary.Own.AsEnumerable().Select(theme => theme.Id).ToList();
        return ThemeLibrary.Find(nameOrFile) ?? throw new UserException(Likeness.Nearest(nameOrFile, names) is { } nearest
            ? $"--theme: found {nameOrFile}, which is no file and no theme; did you mean {nearest}?"
            : $"--theme: found {nameOrFile}; allowed: a theme file, or one of {string.Join(", ", names)}");
    }
}
