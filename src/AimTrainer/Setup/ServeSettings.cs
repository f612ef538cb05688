using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>
/// How a host is to be: the options win over the environment, that over the file, that over what is usual. All sources are checked,
/// also where another one wins, so that a mistake does not lie in wait.
/// </summary>
internal static class ServeSettings
{
    /// <summary>The file in the data folder that is read when none is named.</summary>
    public const string FileName = "serve.json";

    private const int MostStations = 64, MostShotsASecond = 10_000;

    /// <summary>The settings that hold.</summary>
    /// <param name="sources">The sources, the strongest first.</param>
    public static (ConsoleOptions Options, IReadOnlyList<ServeSetting> Settings) Of(params IReadOnlyList<ServeChoice> sources)
    {
        var usual = new ConsoleOptions();
        var settings = new List<ServeSetting>();
        T Pick<T>(string name, Func<ServeChoice, (bool Says, T Value)> of, T otherwise, Func<T, string> words)
        {
            var (value, source) = (otherwise, "usual");
            foreach (var one in sources)
            {
                if (of(one) is (true, var said))
                {
                    (value, source) = (said, one.Source);
                    break;
                }
            }

            settings.Add(new ServeSetting(name, words(value), source));
            return value;
        }

        var options = new ConsoleOptions
        {
            Urls = Pick("urls", one => (one.Urls is not null, one.Urls!), usual.Urls, value => value),
            Stations = Pick("stations", one => (one.Stations is not null, one.Stations ?? 0), usual.Stations, Whole),
            Lines = Pick("lines", one => (one.Lines is not null, one.Lines), usual.Lines, value => value?.ToString() ?? "none"),
            HostNames = Pick("hosts", one => (one.Hosts is not null, (IReadOnlyList<string>)[.. one.Hosts?.AsEnumerable() ?? []]), usual.HostNames, value => value.Count == 0 ? "none" : string.Join(", ", value)),
            ShotsASecond = Pick("shotsASecond", one => (one.ShotsASecond is not null, one.ShotsASecond ?? 0), usual.ShotsASecond, Whole),
            Telemetry = Pick("telemetry", one => (one.Telemetry is not null, one.Telemetry), usual.Telemetry, value => value?.ToString() ?? "off"),
            Logs = Pick("logs", one => (one.Logs is not null, one.Logs ?? default), usual.Logs, value => Json.Word(value)),
        };
        return (options, settings);
    }

    /// <summary>Reads a settings file.</summary>
    /// <exception cref="UserException">It cannot be read, or has mistakes: each is named with its line and path.</exception>
    public static ServeChoice OfFile(string file)
    {
        var json = JsonFile.Read(file, UserFiles.ReadAllBytes(file));
        var choice = json.Root is { } root && ObjectReader.Of(json, root) is { } reader ? Read(file, reader) : null;
        return json.HasProblems || choice is null ? throw UserException.Of(json.Problems) : choice;
    }

    /// <summary>Reads the environment.</summary>
    /// <param name="variable">A variable's value; null when it is not set.</param>
    /// <exception cref="UserException">A variable holds something else than is allowed: each is named.</exception>
    public static ServeChoice OfEnvironment(Func<string, string?> variable)
    {
        var problems = new List<string>();
        T? Take<T>(string name, Func<string, T?> parse, string allowed)
        {
            var text = variable(name)?.Trim();
            if (string.IsNullOrEmpty(text))
            {
                return default;
            }

            var value = parse(text);
            if (value is null)
            {
                problems.Add($"{name}: found {text}; allowed: {allowed}");
            }

            return value;
        }

        var choice = new ServeChoice
        {
            Source = "environment",
            Urls = Take("AIMTRAINER_URLS", text => UrlsProblem(text) is null ? text : null, UrlsAllowed),
            Stations = Take("AIMTRAINER_STATIONS", text => WholeOf(text, MostStations), $"a whole number from 1 to {MostStations}"),
            Lines = Take("AIMTRAINER_LINES", LinesAddress.Parse, LinesAddress.Allowed),
            Hosts = Take<ValueList<string>?>("AIMTRAINER_HOSTS", text => text.Split([';', ','], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).ToValueList(), "names with , between them"),
            ShotsASecond = Take("AIMTRAINER_SHOTS_A_SECOND", text => WholeOf(text, MostShotsASecond), $"a whole number from 1 to {MostShotsASecond}"),
            Telemetry = Take("AIMTRAINER_TELEMETRY", CollectorOf, CollectorAllowed),
            Logs = Take<LogFormat?>("AIMTRAINER_LOGS", text => text switch { "text" => LogFormat.Text, "json" => LogFormat.Json, _ => null }, "text, json"),
        };
        return problems.Count > 0 ? throw UserException.Of(problems) : choice;
    }

    /// <summary>The words for what a collector's address may be.</summary>
    public const string CollectorAllowed = "the address of your own OpenTelemetry collector (OTLP over HTTP), as http://127.0.0.1:4318";

    /// <summary>A collector's address; null when it is none.</summary>
    public static Uri? CollectorOf(string text) =>
        Uri.TryCreate(text, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https" && uri is { Query: "", Fragment: "", UserInfo: "" } ? uri : null;

    private const string UrlsAllowed = $"an address such as {ConsoleHost.UsualUrl}, or several with ; between them";

    private static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static int? WholeOf(string text, int most) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value >= 1 && value <= most ? value : null;

    private static string? UrlsProblem(string urls)
    {
        try
        {
            Binding.HostsOf(urls);
            return null;
        }
        catch (UserException exception)
        {
            return exception.Message;
        }
    }

    private static ServeChoice Read(string file, ObjectReader json)
    {
        const int LongestText = 500, MostNames = 32;
        json.OptionalText("$schema", LongestText);
        var choice = new ServeChoice
        {
            Source = file,
            Urls = Text(json, "urls", text => UrlsProblem(text) is null ? text : null, UrlsAllowed),
            Stations = (int?)json.OptionalWhole("stations", 1, MostStations),
            Lines = Text(json, "lines", LinesAddress.Parse, LinesAddress.Allowed),
            Hosts = json.Has("hosts") ? json.OptionalTexts("hosts", MostNames, LongestText) : null,
            ShotsASecond = (int?)json.OptionalWhole("shotsASecond", 1, MostShotsASecond),
            Telemetry = Text(json, "telemetry", CollectorOf, CollectorAllowed),
            Logs = json.OptionalChoice<LogFormat>("logs"),
        };
        json.Done();
        return choice;
    }

    private static T? Text<T>(ObjectReader json, string name, Func<string, T?> parse, string allowed)
        where T : class
    {
        const int Longest = 500;
        if (json.OptionalText(name, Longest) is not { } text)
        {
            return null;
        }

        var value = parse(text);
        if (value is null)
        {
            json.Report(json.PlaceOf(name), FoundText.Quoted(text), allowed);
        }

        return value;
    }
}
