using System.Text.Json;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace AimTrainer.Store;

/// <summary>Keeps an enumeration by name, spelt as in JSON, so that a value added in the middle does not change old rows.</summary>
/// <typeparam name="T">The enumeration.</typeparam>
public sealed class EnumText<T> : ValueConverter<T, string>
    where T : struct, Enum
{
    /// <summary>Makes one.</summary>
    public EnumText()
        : base(value => Write(value), text => Enum.Parse<T>(text, true))
    {
    }

    /// <summary>The text of a value.</summary>
    public static string Write(T value) => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}
