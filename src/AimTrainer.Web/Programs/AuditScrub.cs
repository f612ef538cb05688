using System.Text;

namespace AimTrainer.Web;

/// <summary>
/// Takes a name out of the audit's files. Lines of today name nobody; those of an older version named who threw. The line stays, with
/// as many dots as the name had bytes: the file is written over in place, because the host has it open for more lines.
/// </summary>
internal static class AuditScrub
{
    public static void Names(string dataFolder, string name)
    {
        byte[][] forms = [.. new[] { name, name.Trim() }.Distinct().Select(form => Encoding.UTF8.GetBytes(System.Text.Json.JsonEncodedText.Encode(form, WebJson.Options.Encoder).ToString()))];
        foreach (var file in Directory.EnumerateFiles(dataFolder, "audit*.jsonl"))
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete);
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            foreach (var form in forms)
            {
                for (var at = bytes.AsSpan().IndexOf(form); at >= 0; at = bytes.AsSpan().IndexOf(form))
                {
                    bytes.AsSpan(at, form.Length).Fill((byte)'.');
                    stream.Position = at;
                    stream.Write(bytes, at, form.Length);
                }
            }

            stream.Flush(flushToDisk: true);
        }
    }
}
