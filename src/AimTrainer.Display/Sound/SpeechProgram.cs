using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>A program of the system that speaks.</summary>
/// <param name="File">The program.</param>
/// <param name="Arguments">What comes before the words.</param>
/// <param name="WordsOnInput">Whether the words go to its input; else they are its last argument.</param>
public sealed record SpeechProgram(string File, ValueList<string> Arguments, bool WordsOnInput)
{
    // No word of a user ever is part of this script: the words come by its input.
    private const string WindowsScript = "Add-Type -AssemblyName System.Speech; (New-Object System.Speech.Synthesis.SpeechSynthesizer).Speak([Console]::In.ReadToEnd())";

    /// <summary>The programs that may speak on a Linux machine, the best first.</summary>
    public static ValueList<SpeechProgram> Linux { get; } = [new("espeak-ng", ["-v", "en"], false), new("spd-say", ["--wait", "--language", "en"], false)];

    /// <summary>The program of Windows.</summary>
    public static ValueList<SpeechProgram> Windows { get; } = [new("powershell.exe", ["-NoProfile", "-NonInteractive", "-Command", WindowsScript], true)];

    /// <summary>The program of macOS.</summary>
    public static ValueList<SpeechProgram> Mac { get; } = [new("say", [], false)];

    /// <summary>The first of some programs that is on a search path; null when none is.</summary>
    /// <param name="programs">The programs, the best first.</param>
    /// <param name="searchPath">Folders, as in the environment's PATH; null for none.</param>
    public static SpeechProgram? Find(ValueList<SpeechProgram> programs, string? searchPath)
    {
        var folders = (searchPath ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        return programs.AsEnumerable().FirstOrDefault(program => folders.Any(folder => System.IO.File.Exists(Path.Combine(folder, program.File))));
    }

    /// <summary>The programs that may speak on this machine.</summary>
    public static ValueList<SpeechProgram> OfThisSystem() => OperatingSystem.IsWindows() ? Windows : OperatingSystem.IsMacOS() ? Mac : Linux;
}
