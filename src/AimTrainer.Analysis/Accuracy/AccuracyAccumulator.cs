using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Works out an <see cref="AccuracyReport"/> while shots arrive: a million shots in bounded memory.</summary>
/// <param name="settings">Lane and noise.</param>
public sealed class AccuracyAccumulator(AccuracySettings settings)
{
    /// <summary>Groups of one kind beyond this many are put together, so that memory stays bounded.</summary>
    public const int MostGroups = 1_000;

    private const string Others = "(all others)";
    private const int Ten = 10;

    // Nobody throws more in a session; a file of many sessions without times would else make a group of every ten shots.
    private const int MostTens = 50;

    private static readonly Grouping[] Groupings = Enum.GetValues<Grouping>();

    private readonly GroupInWork _all = new(default, "all", settings);
    private readonly List<GroupInWork>[] _groups = [.. Groupings.Select(_ => new List<GroupInWork>())];
    private readonly Dictionary<string, GroupInWork>[] _byName = [.. Groupings.Select(_ => new Dictionary<string, GroupInWork>(StringComparer.Ordinal))];

    /// <summary>Everything that is told of the shots added so far.</summary>
    public AccuracyReport Result()
    {
        var groups = _groups.SelectMany(of => of).Select(group => group.Result()).ToValueList();
        var unknown = Groupings.Where(by => _groups[(int)by].Count == 0)
            .Select(by => new UnknownGrouping(by, _all.Shots == 0 ? "no shot" : Missing(by))).ToValueList();
        return new AccuracyReport(_all.Shots, _all.Result().PerTarget, _all.Result().Line, groups, unknown, EarlyAndLate());
    }

    /// <summary>Adds one shot, the next that was thrown.</summary>
    public void Add(ObservedShot shot)
    {
        _all.Add(shot);
        foreach (var by in Groupings)
        {
            if (NameOf(by, shot) is { } name)
            {
                Group(by, name).Add(shot);
            }
        }
    }

    private string? NameOf(Grouping by, ObservedShot shot) => by switch
    {
        Grouping.Session => shot.Session,
        Grouping.Drill => shot.Drill,
        Grouping.Block => shot.Block,
        Grouping.Ball => shot.Ball,
        Grouping.Line => shot.Line,
        Grouping.LanePart => PartOf(shot.Targets[0].Centre),
        Grouping.SpeedBand => shot.Shot.Speed is { } speed ? Band(speed) : null,
        Grouping.Ten => TenOf(shot.NumberInSession),
        _ => throw new ArgumentOutOfRangeException(nameof(by)),
    };

    private string PartOf(Board centre) => centre < settings.TrackFrom ? "outside" : centre < settings.InsideFrom ? "track" : "inside";

    private static string Band(BallSpeed speed)
    {
        var from = (int)Math.Floor(speed.Value.Value);
        var where = speed.Place == SpeedPlace.Unknown ? "nobody said where" : speed.Place.ToString().ToLowerInvariant();
        return string.Create(CultureInfo.InvariantCulture, $"{from} to {from + 1} mph ({where})");
    }

    private static string TenOf(int number)
    {
        var ten = Math.Min((number - 1) / Ten, MostTens);
        return ten == MostTens
            ? string.Create(CultureInfo.InvariantCulture, $"shots {(MostTens * Ten) + 1} and on")
            : string.Create(CultureInfo.InvariantCulture, $"shots {(ten * Ten) + 1} to {(ten + 1) * Ten}");
    }

    private static string Missing(Grouping by) => by switch
    {
        Grouping.SpeedBand => "no shot has a speed",
        Grouping.Session => "the shots say neither session nor time",
        Grouping.Drill or Grouping.Block => $"the shots say no {by.ToString().ToLowerInvariant()}; a stored session does",
        _ => $"no shot says its {by.ToString().ToLowerInvariant()}",
    };

    private GroupInWork Group(Grouping by, string name)
    {
        var known = _byName[(int)by];
        if (known.TryGetValue(name, out var group))
        {
            return group;
        }

        if (known.Count == MostGroups)
        {
            // The last one takes what comes when there is no room for more.
            return _groups[(int)by][^1].Name == Others ? _groups[(int)by][^1] : Begin(by, Others);
        }

        group = Begin(by, name);
        known.Add(name, group);
        return group;
    }

    private GroupInWork Begin(Grouping by, string name)
    {
        var group = new GroupInWork(by, name, settings);
        _groups[(int)by].Add(group);
        return group;
    }

    private ValueList<TargetComparison> EarlyAndLate()
    {
        // Tens of several sessions are put together; a session that came later may have longer tens than the one before.
        var tens = _groups[(int)Grouping.Ten].OrderBy(ten => ten.FirstNumber).ToList();
        return _all.Targets.Select(target =>
        {
            var with = tens.Where(ten => ten.Targets.Any(found => found.Name == target.Name))
                .Select(ten => (ten.Name, ten.Targets.First(found => found.Name == target.Name).Accumulator.Measures)).ToList();
            var late = with.Skip(1).LastOrDefault(ten => ten.Measures.Count >= SpreadComparison.Fewest);
            var early = with.FirstOrDefault();
            return new TargetComparison(
                target.Name,
                SpreadComparison.Of(early.Name ?? "none", early.Measures ?? ErrorMeasures.Of([]), late.Name ?? "none", late.Measures ?? ErrorMeasures.Of([])));
        }).ToValueList();
    }

    private sealed class GroupInWork(Grouping by, string name, AccuracySettings settings)
    {
        private readonly List<(string Name, TargetAccuracyAccumulator Accumulator)> _targets = [];
        private LineAccuracyAccumulator? _line;

        public string Name => name;

        public int Shots { get; private set; }

        public int FirstNumber { get; private set; }

        public IReadOnlyList<(string Name, TargetAccuracyAccumulator Accumulator)> Targets => _targets;

        public void Add(ObservedShot shot)
        {
            FirstNumber = Shots == 0 ? (shot.NumberInSession - 1) / Ten : FirstNumber;
            Shots++;
            foreach (var target in shot.Targets)
            {
                Of(target.Name).Add(target);
            }

            if (shot.Targets.Count > 1)
            {
                (_line ??= new LineAccuracyAccumulator()).Add(shot);
            }
        }

        public AccuracyGroup Result() => new(by, name, Shots, _targets.Select(target => target.Accumulator.Result).ToValueList(), _line?.Result);

        // A line has few targets: looking through them beats a dictionary.
        private TargetAccuracyAccumulator Of(string target)
        {
            foreach (var (known, accumulator) in _targets)
            {
                if (known == target)
                {
                    return accumulator;
                }
            }

            _targets.Add((target, new TargetAccuracyAccumulator(target, settings)));
            return _targets[^1].Accumulator;
        }
    }
}
