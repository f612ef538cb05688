using System.Diagnostics;
using System.Text;
using AimTrainer.Commands;
using AimTrainer.Output;

namespace AimTrainer.Tests;

/// <summary>A folder of its own for a test, and the program run in it.</summary>
internal sealed class Workplace : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    public string Folder { get; } = Directory.CreateTempSubdirectory("aimtrainer-tests-").FullName;

    public string Data => Path.Combine(Folder, "data");

    public string File(string name, string text)
    {
        var path = Path.Combine(Folder, name);
        System.IO.File.WriteAllText(path, text);
        return path;
    }

    /// <summary>Runs a command in this process; nobody types.</summary>
    public Ran Run(params string[] args) => Typed("", args);

    /// <summary>Runs a command in this process with something on its input, as from a pipe.</summary>
    public Ran Typed(string input, params string[] args) => Run(input, false, args);

    /// <summary>Runs a command in this process as if a person typed the input; the output is still plain.</summary>
    public Ran TypedByAPerson(string input, params string[] args) => Run(input, true, args);

    private Ran Run(string input, bool person, string[] args)
    {
        using var bytes = new MemoryStream();
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        using var reader = new StringReader(input);
        var code = CommandLine.Run([.. args, "--data", Data], new UserConsole
        {
            In = reader,
            Out = output,
            Error = error,
            OpenOut = () => bytes,
            PersonTypes = person,
            PersonReads = false,
        });
        return new Ran(code, output + Encoding.UTF8.GetString(bytes.ToArray()), error.ToString());
    }

    /// <summary>Runs a shell command with the real program as <c>$AIM</c> and the data folder as <c>$DATA</c>.</summary>
    public async Task<Ran> ShellAsync(string command)
    {
        var start = new ProcessStartInfo("/bin/bash", ["-c", command]) { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Folder };
        start.Environment["AIM"] = $"dotnet {Path.Combine(AppContext.BaseDirectory, "aimtrainer.dll")}";
        start.Environment["DATA"] = Data;
        using var process = Process.Start(start)!;
        using var patience = new CancellationTokenSource(Patience);
        var (output, error) = (process.StandardOutput.ReadToEndAsync(patience.Token), process.StandardError.ReadToEndAsync(patience.Token));
        try
        {
            await process.WaitForExitAsync(patience.Token);
            return new Ran(process.ExitCode, await output, await error);
        }
        finally
        {
            if (!process.HasExited)
            {
                process.Kill(entireProcessTree: true);
            }
        }
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
