using System.CommandLine;
using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;
using AimTrainer.Store;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Commands;

/// <summary>Writes what the displays of a stored session showed, as pictures; needs no screen.</summary>
internal static class FramesCommand
{
    public static Command Create(UserConsole console)
    {
        var session = new Option<string>("--session")
        {
            Description = "The session's id (see: sessions list), last, or a backup file, of which the newest session is drawn.",
            HelpName = "ID|last|FILE",
            Required = true,
        };
        var output = new Option<string>("--out") { Description = "The folder for the pictures (PNG), made when it is missing.", HelpName = "DIR", Required = true };
        var every = OneOf("--every", "shot: a picture before and one after each shot, one at the start and one at the end.", "shot");
        var size = SizeOption.Create();
        var kind = OneOf("--kind", "Which display: the light on the lane, the screen above it, or both.", "both", "projector", "overhead");
        var theme = DisplayOptions.OfTheme();
        var map = new Option<string?>("--map") { Description = "The projector's map (docs/calibration.md); without it a plain straight one, for looking at.", HelpName = "FILE" };
        var json = CommonOptions.Json();
        var command = new Command("frames", "Write what the displays of a stored session showed, as PNG pictures. Needs no screen.")
        {
            session, output, every, size, kind, theme, map, json,
        };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var colours = DisplayThemes.Read(parsed.GetValue(theme));
            var projectorMap = DisplayMaps.Read(parsed.GetValue(map));
            var kinds = parsed.GetValue(kind) switch
            {
                "projector" => [DisplayKind.Projector],
                "overhead" => [DisplayKind.Overhead],
                _ => new[] { DisplayKind.Projector, DisplayKind.Overhead },
            };
            using var store = Open(parsed.GetValue(session)!, parsed);
            var stored = await FindAsync(store, parsed.GetValue(session)!, cancellationToken).ConfigureAwait(false);
            var moments = await DisplayMoments.EachShotAsync(store, stored, cancellationToken).ToListAsync(cancellationToken).ConfigureAwait(false);
            var folder = Path.GetFullPath(parsed.GetValue(output)!);
            UserFiles.CreateFolder(folder);

            // GL belongs to the thread that opened it.
            var files = await console.MainThread.DoAsync(() => Draw(moments, kinds, folder, parsed.GetValue(size), colours, projectorMap, cancellationToken)).ConfigureAwait(false);
            Report(console, parsed.GetValue(json), folder, stored, files, straight: projectorMap is null && kinds.Contains(DisplayKind.Projector));
            return ExitCodes.Ok;
        });
        return command;
    }

    private static List<(DisplayMoment Moment, DisplayKind Kind, string File)> Draw(
        IReadOnlyList<DisplayMoment> moments, DisplayKind[] kinds, string folder, PictureSize size, Theme theme, ProjectorMap? map, CancellationToken cancellationToken)
    {
        var (opened, problem) = DisplayPictures.Open(size, theme, map);
        using var pictures = opened ?? throw new UserException(problem!, ExitCodes.Failed);
        var files = new List<(DisplayMoment, DisplayKind, string)>();
        foreach (var moment in moments)
        {
            foreach (var kind in kinds)
            {
                cancellationToken.ThrowIfCancellationRequested();
                var file = Path.Combine(folder, $"{moment.Name}-{Json.Word(kind)}.png");
                pictures.Write(file, kind, moment.Snapshot, moment.SinceShot);
                files.Add((moment, kind, file));
            }
        }

        return files;
    }

    private static IRecordStore Open(string session, ParseResult parsed) =>
        File.Exists(session) ? SqliteSessionStore.OpenFile(Path.GetFullPath(session)) : StoreForReading.Open(parsed);

    private static async Task<StoredSession> FindAsync(IRecordStore store, string session, CancellationToken cancellationToken)
    {
        if (session == "last" || File.Exists(session))
        {
            var newest = await store.ListAsync(new SessionFilter { Limit = 1 }, cancellationToken).ConfigureAwait(false);
            session = newest.Count > 0 ? newest[0].SessionId : throw new UserException($"{session}: no session is stored here yet");
        }

        return await store.FindAsync(session, cancellationToken).ConfigureAwait(false)
            ?? throw new UserException($"{session}: no such session and no such file; see: aimtrainer sessions list");
    }

    private static void Report(
        UserConsole console, bool json, string folder, StoredSession stored, List<(DisplayMoment Moment, DisplayKind Kind, string File)> files, bool straight)
    {
        if (json)
        {
            Json.Print(console, new
            {
                Session = stored.Setup.SessionId,
                stored.Setup.Simulated,
                Folder = folder,
                StraightMap = straight,
                Pictures = files.Select(file => new
                {
                    File = Path.GetFileName(file.File),
                    Kind = Json.Word(file.Kind),
                    Shot = file.Moment.Shot > 0 ? file.Moment.Shot : (int?)null,
                    file.Moment.When,
                }),
            });
            return;
        }

        console.Out.WriteLine($"{Words.Count(files.Count, "picture")} of session {stored.Setup.SessionId} in {folder}");
        if (straight)
        {
            console.Out.WriteLine("The projector's pictures are drawn by a plain straight map, for looking at: they fit no real projector (--map takes its own).");
        }
    }

    private static Option<string> OneOf(string name, string description, params string[] allowed) => new(name)
    {
        Description = description,
        HelpName = string.Join('|', allowed),
        DefaultValueFactory = _ => allowed[0],
        CustomParser = result =>
        {
            var found = result.Tokens[0].Value;
            if (!allowed.Contains(found))
            {
                result.AddError($"{name}: found {found}; allowed: {string.Join(", ", allowed)}");
            }

            return found;
        },
    };
}
