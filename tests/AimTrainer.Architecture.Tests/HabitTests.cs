using System.Reflection;
using System.Text.RegularExpressions;

namespace AimTrainer.Architecture.Tests;

/// <summary>Habits of the house that the compiler does not keep.</summary>
public sealed partial class HabitTests
{
    private static readonly string[] TopLevel =
    [
        "README.md", "DEVELOPERS.md", "LICENSE", "AimTrainer.sln", "src", "tests", "drills", "docs",
        "Directory.Build.props", "Directory.Packages.props",
    ];

    private static readonly Assembly[] Assemblies =
    [
        typeof(Domain.Board).Assembly, typeof(Analysis.ErrorMeasures).Assembly, typeof(Sessions.Station).Assembly,
        typeof(Feeds.CsvShots).Assembly, typeof(Store.RecordContext).Assembly, typeof(Store.Sqlite.SqliteSessionStore).Assembly,
        typeof(Store.Postgres.PostgresSessionStore).Assembly,
        typeof(Web.ConsoleHosting).Assembly, typeof(Calibration.ProjectorMap).Assembly, typeof(Display.Colour).Assembly,
        typeof(Reports.BowlerReport).Assembly, typeof(Motion.LaneSurface).Assembly,
    ];

    [Fact]
    public void TopLevel_HoldsOnlyWhatTheDesignNames()
    {
        var found = Directory.EnumerateFileSystemEntries(Repository.Root).Select(entry => Path.GetFileName(entry)!)
            .Where(name => !name.StartsWith('.') && name is not ("bin" or "obj" or "TestResults"));
        Assert.All(found, name => Assert.Contains(name, TopLevel));
    }

    [Fact]
    public void Sources_HoldNoOpenEnds()
    {
        var open = Repository.Files("src", "*.cs").Concat(Repository.Files("tests", "*.cs"))
            .Where(file => Path.GetFileName(file) != $"{nameof(HabitTests)}.cs")
            .SelectMany(file => File.ReadLines(file).Select((line, index) => (File: file, Number: index + 1, Line: line)))
            .Where(line => OpenEnd().IsMatch(line.Line))
            .Select(line => $"{line.File}:{line.Number}: {line.Line.Trim()}");
        Assert.Empty(open);
    }

    [Fact]
    public void StaticFields_OfTheLibraries_NeverChange()
    {
        // A static field that can be assigned again is state that every station would share.
        var changing = Assemblies.SelectMany(assembly => assembly.GetTypes())
            .Where(type => !IsGenerated(type))
            .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
            .Where(field => field is { IsInitOnly: false, IsLiteral: false } && !field.Name.Contains('<', StringComparison.Ordinal))
            .Select(field => $"{field.DeclaringType}.{field.Name}");
        Assert.Empty(changing);
    }

    [Fact]
    public void UnitsInPublicSignatures_OfDomain_AreTypes()
    {
        // A bare double named for a unit belongs in a unit type; the raw reading and the statistics are the stated exceptions.
        string[] exempt = ["ShotReading", "FixedPoint"];
        var bare = typeof(Domain.Board).Assembly.GetExportedTypes()
            .Where(type => !exempt.Contains(type.Name) && type.GetInterfaces().All(i => i.Name != "IComparable`1"))
            .SelectMany(type => type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly))
            .Where(property => property.PropertyType == typeof(double) && UnitName().IsMatch(property.Name))
            .Select(property => $"{property.DeclaringType!.Name}.{property.Name}");
        Assert.Empty(bare);
    }

    private static bool IsGenerated(Type type) =>
        type.Name.Contains('<', StringComparison.Ordinal) || (type.DeclaringType is { } outer && IsGenerated(outer));

    [GeneratedRegex(@"\b(TODO|FIXME|HACK|XXX)\b")]
    private static partial Regex OpenEnd();

    [GeneratedRegex("(Feet|Inches|Degrees|MilesPerHour|Rpm|Mph)$")]
    private static partial Regex UnitName();
}
