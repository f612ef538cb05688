using System.Xml.Linq;

namespace AimTrainer.Architecture.Tests;

/// <summary>The arrows between projects. Source: the design's table of projects; docs/architecture.md says the same.</summary>
public sealed class ArrowTests
{
    private static readonly Dictionary<string, string[]> MayReference = new()
    {
        ["AimTrainer.Domain"] = [],
        ["AimTrainer.Analysis"] = ["AimTrainer.Domain"],
        ["AimTrainer.Motion"] = ["AimTrainer.Domain"],
        ["AimTrainer.Calibration"] = ["AimTrainer.Domain"],
        ["AimTrainer.Sessions"] = ["AimTrainer.Domain", "AimTrainer.Analysis"],
        ["AimTrainer.Feeds"] = ["AimTrainer.Sessions", "AimTrainer.Motion"],
        ["AimTrainer.Store"] = ["AimTrainer.Sessions"],
        ["AimTrainer.Store.Sqlite"] = ["AimTrainer.Store"],
        ["AimTrainer.Store.Postgres"] = ["AimTrainer.Store"],
        ["AimTrainer.Display"] = ["AimTrainer.Sessions", "AimTrainer.Calibration"],
        ["AimTrainer.Reports"] = ["AimTrainer.Analysis", "AimTrainer.Store"],
        ["AimTrainer.Web"] = ["AimTrainer.Motion", "AimTrainer.Sessions", "AimTrainer.Store", "AimTrainer.Reports"],
    };

    /// <summary>Packages that only some projects may know; whatever is not named here is free.</summary>
    private static readonly Dictionary<string, string[]> MayUse = new()
    {
        ["MathNet.Numerics"] = ["AimTrainer.Analysis", "AimTrainer.Calibration"],
        ["Microsoft.EntityFrameworkCore"] = ["AimTrainer.Store", "AimTrainer.Store.Sqlite", "AimTrainer.Store.Postgres"],
        ["Silk.NET"] = ["AimTrainer.Display"],
        ["NAudio"] = ["AimTrainer.Display"],
        ["System.CommandLine"] = ["AimTrainer"],
        ["ScottPlot"] = ["AimTrainer.Reports"],
        ["Spectre.Console"] = ["AimTrainer"],
    };

    public static TheoryData<string> Projects() =>
        new(Repository.Files("src", "*.csproj").Select(file => Path.GetFileNameWithoutExtension(file)!));

    [Theory]
    [MemberData(nameof(Projects))]
    public void ProjectReferences_OfEachProject_PointOnlyWhereTheDesignAllows(string project)
    {
        if (project == "AimTrainer")
        {
            return; // The composition root may reference all.
        }

        var allowed = Assert.Contains(project, (IReadOnlyDictionary<string, string[]>)MayReference);
        var found = Read(project).Descendants("ProjectReference").Select(item => Path.GetFileNameWithoutExtension((string)item.Attribute("Include")!));
        Assert.All(found, reference => Assert.Contains(reference, allowed));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void PackageReferences_OfEachProject_StayWhereTheyBelong(string project)
    {
        var found = Read(project).Descendants("PackageReference").Select(item => (string)item.Attribute("Include")!).ToList();
        foreach (var (prefix, owners) in MayUse)
        {
            if (!owners.Contains(project))
            {
                Assert.DoesNotContain(found, package => package.StartsWith(prefix, StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public void PackageReferences_OfDomain_AreNone() => Assert.Empty(Read("AimTrainer.Domain").Descendants("PackageReference"));

    [Fact]
    public void CompiledReferences_OfDomain_AreTheFrameworkAlone()
    {
        var references = typeof(Domain.Board).Assembly.GetReferencedAssemblies().Select(name => name.Name!);
        Assert.All(references, name => Assert.StartsWith("System", name, StringComparison.Ordinal));
    }

    [Fact]
    public void Solution_HoldsEveryProject()
    {
        var solution = File.ReadAllText(Path.Combine(Repository.Root, "AimTrainer.sln"));
        var projects = Repository.Files("src", "*.csproj").Concat(Repository.Files("tests", "*.csproj")).Select(Path.GetFileName);
        Assert.All(projects, project => Assert.Contains(project!, solution, StringComparison.Ordinal));
    }

    private static XDocument Read(string project) =>
        XDocument.Load(Path.Combine(Repository.Root, "src", project, project + ".csproj"));
}
