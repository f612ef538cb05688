using System.Reflection;
using System.Runtime.CompilerServices;

namespace AimTrainer.Domain.Tests;

/// <summary>Keeps the unit types alike. They are found, not listed, so a new one that breaks the pattern fails here.</summary>
public sealed class UnitTypesTests
{
    /// <summary>Every type that has a file in the folder of unit types, and every type that is built like one, wherever it lies.</summary>
    public static TheoryData<Type> UnitTypes
    {
        get
        {
            var domain = typeof(Board).Assembly;
            var inFolder = Directory.EnumerateFiles(Folder(), "*.cs")
                .Select(file => domain.GetType($"AimTrainer.Domain.{Path.GetFileNameWithoutExtension(file)}")
                    ?? throw new InvalidOperationException($"{file} holds no type of its own name"))
                .Where(type => type.IsPublic);
            var alike = domain.GetExportedTypes()
                .Where(type => type.IsValueType && type.IsAssignableTo(typeof(IComparable<>).MakeGenericType(type)));
            return new TheoryData<Type>(inFolder.Union(alike).Where(type => !type.IsEnum));
        }
    }

    [Fact]
    public void UnitTypes_Discovered_AreAtLeastTheSevenOfTheDesign()
    {
        var found = UnitTypes.Select(row => row.Data).ToList();
        Type[] design = [typeof(Board), typeof(BoardOffset), typeof(Feet), typeof(Inches), typeof(Degrees), typeof(MilesPerHour), typeof(Rpm)];
        Assert.Empty(design.Except(found));
    }

    [Theory]
    [MemberData(nameof(UnitTypes))]
    public void UnitType_Shape_IsAReadonlyRecordStruct(Type type)
    {
        Assert.True(type.IsValueType);
        Assert.True(type.IsDefined(typeof(IsReadOnlyAttribute)), "it must be readonly");
        Assert.True(type.GetMethod("PrintMembers", BindingFlags.Instance | BindingFlags.NonPublic) is not null, "it must be a record");
        Assert.True(type.IsAssignableTo(typeof(IComparable<>).MakeGenericType(type)), "it must compare with its own kind");
        Assert.Equal(type, type.GetMethod(nameof(ToString), Type.EmptyTypes)!.DeclaringType);
    }

    [Theory]
    [MemberData(nameof(UnitTypes))]
    public void UnitType_State_IsOnePrivateField(Type type)
    {
        var field = Assert.Single(type.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic));
        Assert.True(field.IsPrivate && field.IsInitOnly, $"{field.Name} must be private and readonly");
        Assert.True(field.FieldType.IsPrimitive, $"{field.Name} must be a plain number");
    }

    [Theory]
    [MemberData(nameof(UnitTypes))]
    public void UnitType_Limits_AreConstants(Type type)
    {
        var limits = new List<double>();
        foreach (var name in (string[])["Minimum", "Maximum"])
        {
            var field = type.GetField(name, BindingFlags.Public | BindingFlags.Static);
            Assert.True(field is { IsLiteral: true } && field.FieldType == typeof(double), $"it needs a public constant double {name}");
            limits.Add((double)field.GetRawConstantValue()!);
        }

        Assert.True(limits[0] < limits[1], "Minimum must lie below Maximum");
        Assert.True(limits[0] <= 0 && limits[1] >= 0, "the default value, 0, must be in range");
    }

    [Theory]
    [MemberData(nameof(UnitTypes))]
    public void UnitType_Making_IsByNamedFactoriesOnly(Type type)
    {
        Assert.DoesNotContain(type.GetConstructors(), constructor => constructor.GetParameters().Length > 0);
        var factories = type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly)
            .Where(method => !method.IsSpecialName && method.ReturnType == type).ToList();
        Assert.NotEmpty(factories);
        Assert.All(factories, factory =>
        {
            Assert.StartsWith("From", factory.Name, StringComparison.Ordinal);
            Assert.Equal([typeof(double)], factory.GetParameters().Select(parameter => parameter.ParameterType));
        });
        Assert.DoesNotContain(type.GetProperties(), property => property.SetMethod is { IsPublic: true });
    }

    [Theory]
    [MemberData(nameof(UnitTypes))]
    public void UnitType_Conversions_AreNone(Type type) =>
        Assert.DoesNotContain(
            type.GetMethods(BindingFlags.Public | BindingFlags.Static),
            method => method.Name is "op_Implicit" or "op_Explicit");

    [Theory]
    [MemberData(nameof(UnitTypes))]
    public void UnitType_Contract_IsTested(Type type)
    {
        var contract = typeof(UnitContract<>).MakeGenericType(type);
        Assert.Contains(typeof(UnitTypesTests).Assembly.GetTypes(), test => test.IsSubclassOf(contract) && !test.IsAbstract);
    }

    private static string Folder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "AimTrainer.sln")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder?.FullName ?? throw new InvalidOperationException("run from within the source tree"), "src", "AimTrainer.Domain", "Units");
    }
}
