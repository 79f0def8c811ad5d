namespace LubeController.Board;

/// <summary>CRC-32 as in IEEE 802.3: reflected polynomial EDB88320, start and final inversion.</summary>
public static class Crc32
{
    private const uint Polynomial = 0xEDB88320;

    private static readonly uint[] Nibbles = Make();

    /// <summary>The check value of some bytes.</summary>
    public static uint Compute(byte[] bytes, int offset, int length) => ~Add(0xFFFFFFFF, bytes, offset, length);

    /// <summary>The check value of two parts of an array, one after the other.</summary>
    public static uint ComputeTwo(byte[] bytes, int offset, int length, int secondOffset, int secondLength) =>
        ~Add(Add(0xFFFFFFFF, bytes, offset, length), bytes, secondOffset, secondLength);

    /// <summary>Four bits at a time: a table of sixteen is a fair price on an interpreter.</summary>
    private static uint Add(uint crc, byte[] bytes, int offset, int length)
    {
        uint[] nibbles = Nibbles;
        for (int index = offset; index < offset + length; index++)
        {
            crc ^= bytes[index];
            crc = (crc >> 4) ^ nibbles[(int)(crc & 15)];
            crc = (crc >> 4) ^ nibbles[(int)(crc & 15)];
        }

        return crc;
    }

    private static uint[] Make()
    {
        var nibbles = new uint[16];
        for (int index = 0; index < nibbles.Length; index++)
        {
            uint crc = (uint)index;
            for (int bit = 0; bit < 4; bit++)
                crc = (crc & 1) != 0 ? (crc >> 1) ^ Polynomial : crc >> 1;
            nibbles[index] = crc;
        }

        return nibbles;
    }
}
